import { Told } from "../../parts/Told.tsx";
import { sourced } from "../../words/sourced.ts";

/** Where a number comes from. */
export function Source({ of }: { of: string }) {
  return <>{sourced(of).map((part, place) => [place > 0 && "; ", part.map((piece) => <Told of={piece} key={piece.words} />)])}</>;
}
