// Made by npm run generate from package.json.
export const version = '0.1.0'
