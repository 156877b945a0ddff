import { t } from "../words/index.ts";
import { hideToast, toastShown } from "./toast.ts";

/** The place where toasts appear; stands once in the frame. */
export function Toast() {
  const shown = toastShown.value;
  const undo = () => {
    hideToast();
    void shown?.undo?.();
  };
  return (
    <div class="toast-place" role="status" aria-live="polite">
      {shown && (
        <div class="toast" key={shown.id}>
          <span class="toast__words">{shown.words}</span>
          {shown.undo && <button type="button" class="toast__undo" onClick={undo}>{t("frame.undo")}</button>}
        </div>
      )}
    </div>
  );
}
