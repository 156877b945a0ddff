import { Component, type ComponentChildren } from "preact";

import { Button } from "../parts/BigButton.tsx";
import { Screen } from "../parts/Screen.tsx";
import { t } from "../words/index.ts";
import { CopyDetails } from "./CopyDetails.tsx";
import { noteMistake } from "./mistakes.ts";

/** Keeps one broken screen from taking the app with it. */
export class ErrorBoundary extends Component<{ children: ComponentChildren }, { broken: boolean }> {
  override state = { broken: false };

  override componentDidCatch(error: unknown): void {
    noteMistake(error);
    console.error(error);
    this.setState({ broken: true });
  }

  override render() {
    if (!this.state.broken) return this.props.children;
    return (
      <Screen title={t("frame.broken_title")} back="/">
        <p>{t("frame.broken")}</p>
        <div class="buttons">
          <Button tone="main" onClick={() => this.setState({ broken: false })}>{t("frame.try_again")}</Button>
          <CopyDetails />
        </div>
      </Screen>
    );
  }
}
