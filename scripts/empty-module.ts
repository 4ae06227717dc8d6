/** Stands in for packages that are only used by functions we do not call. */
export default {};
