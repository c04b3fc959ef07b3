const KEY = 'brakewright.name';

/** The name that goes on the record for what is done here; '' when none was given. Kept on this computer. */
export const userName = (): string => {
  try {
    return window.localStorage.getItem(KEY) ?? '';
  } catch {
    return ''; // storage may be forbidden: the record then says 'local'
  }
};

export const setUserName = (name: string): void => {
  try {
    window.localStorage.setItem(KEY, name.slice(0, 40));
  } catch {
    // not kept: asked again next time
  }
};
