import { useRef } from "preact/hooks";

/** The record as it was when its form opened: an edit changes only what the form has changed since. */
export function useAsOpened<R extends { record_id: string }>(record: R | null | undefined): R | null | undefined {
  const opened = useRef(record);
  if (opened.current?.record_id !== record?.record_id) opened.current = record;
  return opened.current;
}
