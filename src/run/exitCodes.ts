/** What a command ends with: everything was used, some rows were set aside, or it cannot be used. @private */
export const exitCodes = { clean: 0, setAside: 1, unusable: 2 } as const;
