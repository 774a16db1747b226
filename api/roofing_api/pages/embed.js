// <roof-order>: the drawing and order list of a roof, in anybody's page.
//
//   <script type="module" src="https://roofs.example/embed.js"></script>
//   <roof-order eave-length="14 ft" slope-length="9 ft 4 in" pitch="3:12"></roof-order>
//
// Every attribute that HTML does not know is a parameter of /v1/plans, with hyphens for underscores.
// It tells the page what came with the events `planned` and `refused`.

import { address, ask, HERE, Latest, Refusal, settled } from "./asking.js";
import { DEFERS, drawing, findingList, heading, made, orderTable, summary } from "./showing.js";

/** Attributes that say how to show the plan, and those that any element may have. */
const OWN = new Set(["service", "drawing", "parts"]);
const HTML = new Set([
  "accesskey", "autofocus", "class", "contenteditable", "dir", "draggable", "enterkeyhint", "exportparts",
  "hidden", "id", "inert", "inputmode", "is", "itemid", "itemprop", "itemref", "itemscope", "itemtype", "lang",
  "nonce", "part", "popover", "role", "slot", "spellcheck", "style", "tabindex", "title", "translate",
]);

const STYLE = `
  :host { display: block; container-type: inline-size; color: #111; background: #fff; font: 1rem/1.45 system-ui, sans-serif; }
  :host([hidden]) { display: none; }
  .heading { font-weight: bold; margin: 0 0 0.5rem; }
  .wide { overflow-x: auto; border: 1px solid; margin-bottom: 0.75rem; }
  .wide:focus-visible { outline: 3px solid; outline-offset: 2px; }
  svg { display: block; width: 100%; min-width: 34rem; height: auto; }
  table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
  caption { text-align: left; font-weight: bold; padding: 0.4rem 0.6rem; }
  th, td { padding: 0.3rem 0.6rem; text-align: right; border-top: 1px solid #bbb; white-space: nowrap; }
  th:first-child { text-align: left; }
  ul { padding-left: 1.2rem; }
  cite { font-style: normal; font-size: 0.9em; color: #595959; }
  .breaks_code, .stops_the_job { border-left: 3px solid; padding-left: 0.5rem; }
  .status { position: absolute; clip-path: inset(50%); width: 1px; height: 1px; overflow: hidden; }
  .defers { font-size: 0.9em; color: #595959; }
  a { color: inherit; }
  @container (max-width: 34rem) {
    thead { display: none; }
    table, caption, tbody, tr, th, td { display: block; }
    th, td { border: 0; text-align: left; white-space: normal; padding: 0 0.6rem; }
    tr { border-top: 1px solid #bbb; padding: 0.4rem 0; }
    td[data-head]::before { content: attr(data-head) ": "; color: #595959; }
  }
`;

class RoofOrder extends HTMLElement {
  #latest = new Latest();
  #later = settled(() => this.#plan(), 60);
  #observer = new MutationObserver(() => this.#later());
  #shown = made("div", { role: "group" });
  #status = made("p", { class: "status", role: "status" });
  #made = null;

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(STYLE);
    root.adoptedStyleSheets = [sheet];
    root.append(this.#status, this.#shown);
    this.#shown.append(made("slot"));
  }

  connectedCallback() {
    this.#observer.observe(this, { attributes: true });
    this.#later();
  }

  disconnectedCallback() {
    this.#observer.disconnect();
    this.#later.never();
    this.#latest.drop();
  }

  /** The plan that is shown, as /v1/plans answered it; null while there is none. */
  get plan() {
    return this.#made;
  }

  /** What is asked, by the names of the parameters of /v1/plans; to set it sets the attributes. */
  get choices() {
    return Object.fromEntries(
      [...this.attributes]
        .filter(({ name }) => isParameter(name))
        .map(({ name, value }) => [name.replaceAll("-", "_"), value]),
    );
  }

  set choices(wanted) {
    for (const { name } of [...this.attributes]) {
      if (isParameter(name)) this.removeAttribute(name);
    }
    for (const [name, text] of Object.entries(wanted)) {
      this.setAttribute(name.replaceAll("_", "-"), `${text}`);
    }
  }

  /** Which drawing is shown, by its word in the interface; `none` for none. */
  get drawing() {
    return this.getAttribute("drawing") || "";
  }

  set drawing(kind) {
    this.setAttribute("drawing", kind);
  }

  /** Where the service is, if not where this script came from. */
  get service() {
    return this.getAttribute("service") || HERE.href;
  }

  set service(base) {
    this.setAttribute("service", base);
  }

  #parts() {
    return (this.getAttribute("parts") || "heading drawing order findings").split(/\s+/);
  }

  async #plan() {
    const choices = this.choices;
    try {
      const shown = await this.#latest.only((signal) => this.#asked(choices, signal));
      if (shown) this.#show(shown, choices);
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
      this.#refuse(refusal);
    }
  }

  async #asked(choices, signal) {
    const plan = await (await ask(address("v1/plans", choices, this.service), { signal })).json();
    const kind = this.drawing || (plan.planes.length > 1 ? "roof_plan" : "plane");
    if (kind === "none" || !this.#parts().includes("drawing")) return { plan };
    const there = address("v1/plans", { ...choices, drawing: kind }, this.service);
    return { plan, svg: await (await ask(there, { signal })).text() };
  }

  #show({ plan, svg }, choices) {
    this.#made = plan;
    const whole = address("", choices, this.service).href;
    const parts = {
      heading: () => made("p", { class: "heading", part: "heading" }, heading(plan)),
      drawing: () =>
        svg && made("div", { class: "wide", part: "drawing", tabindex: "0", role: "group", "aria-label": "Drawing" }, drawing(svg)),
      order: () =>
        made("div", { class: "wide", tabindex: "0", role: "group", "aria-label": "Order list" }, orderTable(plan)),
      findings: () => findingList(plan),
    };
    this.#shown.setAttribute("aria-label", heading(plan));
    this.#shown.replaceChildren(
      ...this.#parts().map((part) => parts[part]?.()).filter(Boolean),
      made("p", { class: "defers" }, `${DEFERS} `, made("a", { href: whole }, "The whole plan, with its cautions")),
    );
    this.#status.textContent = summary(plan);
    this.#tell("planned", { plan, choices, address: whole });
  }

  #refuse(refusal) {
    this.#made = null;
    const told = refusal.errors.map(({ parameter = "", wanted, detail }) =>
      made("li", {}, parameter ? `${parameter.replaceAll("_", "-")}: ${wanted}` : detail),
    );
    this.#shown.setAttribute("aria-label", "Roof, not planned");
    this.#shown.replaceChildren(
      made("p", { class: "heading", part: "refusal" }, "This roof is not planned."),
      told.length ? made("ul", {}, ...told) : made("p", {}, refusal.message),
    );
    this.#status.textContent = "Not planned.";
    this.#tell("refused", { problem: refusal.problem });
  }

  #tell(what, detail) {
    this.dispatchEvent(new CustomEvent(what, { detail, bubbles: true, composed: true }));
  }
}

function isParameter(name) {
  return !OWN.has(name) && !HTML.has(name) && !/^(on|data-|aria-)/.test(name);
}

if (!customElements.get("roof-order")) customElements.define("roof-order", RoofOrder);
