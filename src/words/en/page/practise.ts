export const practise = {};
