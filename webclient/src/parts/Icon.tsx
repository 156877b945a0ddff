// Our own small drawings, on a 24 by 24 grid, in the colour of the text around them.

const PATHS = {
  back: "M14.5 5 8 12l6.5 7",
  forward: "M9.5 5 16 12l-6.5 7",
  plus: "M12 5v14M5 12h14",
  minus: "M5 12h14",
  tick: "M5 12.5l4.5 4.5L19 7",
  cross: "M6 6l12 12M18 6 6 18",
  info: "M12 11v6M12 7.5v.5M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18z",
  aid: "M9 3h6v6h6v6h-6v6H9v-6H3V9h6z",
  attention: "M12 4 2.8 19.5h18.4zM12 10v4.5M12 17v.3",
  stop: "M8.5 3h7L21 8.5v7L15.5 21h-7L3 15.5v-7zM8.5 12h7",
  sun: "M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8zM12 2v2.5M12 19.5V22M2 12h2.5M19.5 12H22M5 5l1.7 1.7M17.3 17.3 19 19M5 19l1.7-1.7M17.3 6.7 19 5",
  today: "M4 6h16v14H4zM4 10h16M8 3.5V7M16 3.5V7M8 15h3",
  fields: "M3 19V9M9 19V9M15 19V9M21 19V9M1.5 12h21M1.5 16h21",
  watch: "M12 6a7.5 7.5 0 1 0 0 15 7.5 7.5 0 0 0 0-15zM12 13.5V9.5M9.5 2.5h5M12 2.5V6",
  board: "M4 20V12M10 20V8M16 20v-6M22 20V4M2 20h21",
  more: "M4 7h16M4 12h16M4 17h16",
  horse: "M6 20c0-5 1-8 4-10L9 6l3 1.5C16 7 19 10 20 14l-2.5 1.5C16 14 14.5 13.5 13 14c-.5 2 0 4 1 6",
  send: "M12 19V6M6 11.5 12 5.5l6 6M5 21h14",
  note: "M5 4h14v12l-4 4H5zM15 20v-4h4M8.5 8.5h7M8.5 12h5",
  person: "M12 4a4 4 0 1 0 0 8 4 4 0 0 0 0-8zM4.5 20.5c.8-4 3.600-6 7.5-6s6.700 2 7.5 6",
} as const;

export type IconName = keyof typeof PATHS;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={PATHS[name]} fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round" />
    </svg>
  );
}
