/** Marks what is invented for demonstration, where its name does not say so already. */
export const DemoTag = ({ of: { name, demo } }: { readonly of: { readonly name: string; readonly demo: boolean } }) =>
  demo && !/demo/i.test(name) ? <> <span className="tag">demo</span></> : null;
