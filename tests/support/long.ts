/** True in `npm run test:long`, which goes through what takes long and is seldom at fault; every day a few fixed cases of it stand for the rest. */
export const IS_LONG = process.env.FOAMLOFT_LONG === '1';
