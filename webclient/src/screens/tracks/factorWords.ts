import type { Calibrated } from "../../pace/calibration.ts";
import { decimal } from "../../words/decimal.ts";
import { t } from "../../words/index.ts";

/** “Reading × 0.992 (± 0.002) is metres”. */
export function factorWords({ factor, factor_u }: Calibrated): string {
  return t("calibration.factor", { factor: decimal(factor.toFixed(3)), u: decimal(Math.max(0.001, factor_u).toFixed(3)) });
}
