import { generateKeyPairSync, sign } from 'node:crypto';

/** A key and a certificate for 'localhost' that signs itself, in PEM: X.509 (RFC 5280) written out by hand, for tests. */
export const selfSigned = (): { readonly key: string; readonly cert: string } => {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  // 1.2.840.10045.4.3.2, ecdsa-with-SHA256
  const algorithm = der(0x30, Buffer.from('06082a8648ce3d040302', 'hex'));
  // one attribute, commonName (2.5.4.3)
  const name = der(0x30, der(0x31, der(0x30, Buffer.from('0603550403', 'hex'), der(0x0c, Buffer.from('localhost')))));
  const time = (days: number): Buffer =>
    der(0x17, Buffer.from(`${new Date(Date.now() + days * 86_400_000).toISOString().replace(/[-:T]/g, '').slice(2, 14)}Z`));
  // 2.5.29.17, subjectAltName: dNSName localhost
  const names = der(0x30, Buffer.from('0603551d11', 'hex'), der(0x04, der(0x30, der(0x82, Buffer.from('localhost')))));
  const body = der(0x30,
    der(0xa0, Buffer.from('020102', 'hex')), // version 3
    Buffer.from('020101', 'hex'), // serial number 1
    algorithm, name, der(0x30, time(-1), time(1)), name,
    publicKey.export({ type: 'spki', format: 'der' }), der(0xa3, der(0x30, names)),
  );
  const signature = sign('sha256', body, privateKey);
  const cert = der(0x30, body, algorithm, der(0x03, Buffer.from([0]), signature));
  return {
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    cert: `-----BEGIN CERTIFICATE-----\n${cert.toString('base64').replace(/.{64}/g, '$&\n')}\n-----END CERTIFICATE-----\n`,
  };
};

/** Tag, length, contents. */
const der = (tag: number, ...contents: readonly Uint8Array[]): Buffer => {
  const all = Buffer.concat(contents);
  const length = all.length < 0x80 ? [all.length] : all.length < 0x100 ? [0x81, all.length] : [0x82, all.length >> 8, all.length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...length]), all]);
};
