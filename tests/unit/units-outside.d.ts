// The two outside libraries that the units are checked against publish no types.
declare module 'js-quantities' {
  export default function Qty(
    amount: number,
    unit: string,
  ): { to(unit: string): { readonly scalar: number } };
}
declare module 'convert-units' {
  export default function convert(amount: number): {
    from(unit: string): { to(unit: string): number };
  };
}
