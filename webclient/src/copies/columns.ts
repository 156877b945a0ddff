// The columns of each table, for taking out and for bringing in. Names, not ids: a table is for people.

export const COLUMNS = {
  attempt: "date horse field activity fence profile element outcome rein ground way landing company pace attitude height_cm note",
  timed_canter: "date horse field track distance_m distance_u_m measured_by elapsed_ms speed_mpm target_speed_mpm level_id start over_fences note",
  flatwork_test: "date horse test rulebook_id level_id percent marks errors judged note",
  jumping_round: "date horse height_cm efforts knockdowns refusals combinations rider_fall horse_fall completed time_penalties judged note",
  event_result:
    "date horse event rulebook_id level_id status dressage_penalties show_jumping_jump_penalties show_jumping_time_penalties " +
    "cross_country_jump_penalties cross_country_time_penalties cross_country_seconds_over rider_fall horse_fall place starters note",
} as const;

export type TableKind = keyof typeof COLUMNS;
export const TABLE_KINDS = Object.keys(COLUMNS) as TableKind[];

export function columnsOf(kind: TableKind): string[] {
  return COLUMNS[kind].split(" ");
}
