// A shed-kit configurator over the public interface: a plan, its price and better sizes, asked anew
// when a slider has come to rest. Answers to what was asked before are dropped.

const byId = (id) => document.getElementById(id);
const form = byId("choices");
const SERVICE = new URL(
  new URLSearchParams(location.search).get("service") || document.documentElement.dataset.service,
);
const SLIDERS = ["width", "depth", "overhang", "pitch"];
/** How far from the size wished for a better one may lie, and how many are told. */
const ABOUT = 12;
const KEEP = 3;
/** A slider rests when it has not moved for so long, in milliseconds. */
const REST = 200;

let turn = 0;
let controller = new AbortController();
let resting;
const offered = fetch("prices.json").then((answer) => answer.json());

const feet = (inches) =>
  [inches >= 12 && `${Math.floor(inches / 12)} ft`, (inches % 12 || inches < 12) && `${inches % 12} in`]
    .filter(Boolean)
    .join(" ");
const SAYS = { width: feet, depth: feet, overhang: feet, pitch: (rise) => `${rise} in 12` };

/** The job in the words of the interface: the walls as measured, the roof beyond them. */
function job() {
  const { width, depth, overhang, pitch, material } = form.elements;
  const past = `${overhang.value} in`;
  return {
    roof: {
      form: "single_slope",
      measured: "walls",
      eave_length: `${width.value} in`,
      run: `${depth.value} in`,
      pitch: `${pitch.value}:12`,
      eave_overhang: past,
      ridge_overhang: past,
      rake_overhang: past,
    },
    shingle: { material: material.value },
  };
}

/** The same as the query of a link. */
function query() {
  const { roof, shingle } = job();
  return { ...roof, shingle: shingle.material };
}

function address(path, parameters = {}) {
  const there = new URL(path, SERVICE);
  for (const [name, text] of Object.entries(parameters)) there.searchParams.set(name, text);
  return there;
}

async function ask(path, body, signal) {
  const answer = await fetch(address(path), {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
    signal,
  });
  const said = await answer.json();
  if (answer.ok) return said;
  throw new Error(said.errors?.map(({ wanted, detail }) => wanted || detail).join(" ") || said.detail);
}

function saySliders() {
  for (const name of SLIDERS) {
    const slider = byId(name);
    const text = SAYS[name](Number(slider.value));
    byId(`${name}-says`).textContent = text;
    slider.setAttribute("aria-valuetext", text);
  }
}

function keepAddress() {
  const here = new URL(location.href);
  for (const [name, text] of new FormData(form)) here.searchParams.set(name, text);
  history.replaceState(null, "", here);
}

async function configure() {
  controller.abort();
  controller = new AbortController();
  const mine = ++turn;
  const { signal } = controller;
  const wished = job();
  const { prices, shingles } = await offered;
  if (mine !== turn) return;
  const list = { ...prices, shingles: shingles[wished.shingle.material] };
  const asked = [
    [ask("v1/plans", wished, signal), showRoof],
    [ask("v1/orders", { job: wished, prices: list }, signal), showPrice],
    [ask("v1/priced_sizes", { job: { ...wished, ranges: about(), keep: KEEP }, prices: list }, signal), showBetter],
  ];
  try {
    await Promise.all(
      asked.map(async ([answer, show]) => {
        const came = await answer;
        if (mine === turn) show(came);
      }),
    );
    if (mine === turn) say(`${byId("roof").textContent} ${byId("total").textContent}`, false);
  } catch (failure) {
    if (mine === turn) say(failure instanceof TypeError ? noAnswer() : `Not with this kit: ${failure.message}`, true);
  }
}

function noAnswer() {
  return `No answer from ${SERVICE.origin}: start it with --allow-origin ${location.origin}`;
}

/** Say what came: a fault for all to see, or to a screen reader alone what stands below anyway. */
function say(text, isFault) {
  byId("status").textContent = text;
  byId("status").classList.toggle("fault", isFault);
  for (const section of document.querySelectorAll("#answer section")) section.hidden = isFault;
}

function about() {
  const within = (name) => {
    const { min, max, value } = byId(name);
    return {
      least: `${Math.max(Number(min), Number(value) - ABOUT)} in`,
      most: `${Math.min(Number(max), Number(value) + ABOUT)} in`,
    };
  };
  return { eave_length: within("width"), run: within("depth"), step: "1 in" };
}

function made(name, attributes, ...children) {
  const element = Object.assign(document.createElement(name), attributes);
  element.append(...children);
  return element;
}

function showRoof(plan) {
  const bought = plan.order.shingles;
  byId("roof").textContent =
    `${plan.roof.squares.toFixed(2)} squares of roof, ${bought.packs} bundles of shingles.`;
  const drawing = byId("drawing");
  drawing.src = address("v1/plans", { ...query(), drawing: "plane" });
  drawing.alt = `The roof from its eave to its top edge, with ${plan.shingles.courses} courses of shingles.`;
  byId("whole").href = address("", query());
  const grave = plan.findings.filter(({ severity }) => severity !== "worth_knowing");
  byId("findings").replaceChildren(...grave.map(({ says, cure }) => made("li", {}, `${says} ${cure}`)));
}

function showPrice(order) {
  byId("total").textContent = `${order.currency} ${order.total}, of which tax ${order.tax}.`;
  byId("lines").replaceChildren(
    ...order.lines.map((line) =>
      made(
        "tr",
        {},
        made("th", { scope: "row" }, line.item),
        made("td", {}, line.bought.map((one) => packs(line, one)).join(", ") || "nothing"),
        made("td", {}, line.cost),
      ),
    ),
  );
}

function packs({ pack }, { packs: number, holds, name }) {
  const what = name || pack;
  const many = number === 1 ? what : what.endsWith("x") ? `${what}es` : `${what}s`;
  const size = holds.unit === "in" ? feet(holds.value) : `${holds.value} ${holds.unit.replace("_", " ")}`;
  return `${number} ${many} of ${size.replace(" count", "")}`;
}

function showBetter(found) {
  byId("better-says").textContent = found.says;
  byId("better").replaceChildren(
    ...found.better.map((size) => {
      const take = made("button", { type: "button" }, `Take ${size.sizes.map(({ length }) => feet(length)).join(" by ")}`);
      take.addEventListener("click", () => {
        for (const { measurement, length } of size.sizes) {
          byId(measurement === "run" ? "depth" : "width").value = length;
        }
        changed();
        byId("width").focus();
      });
      return made("li", {}, `${size.says} `, take);
    }),
  );
}

function changed() {
  saySliders();
  clearTimeout(resting);
  resting = setTimeout(() => {
    keepAddress();
    configure();
  }, REST);
}

for (const [name, text] of new URLSearchParams(location.search)) {
  if (SLIDERS.includes(name)) byId(name).value = text;
  if (name === "material" && [...form.elements.material].some(({ value }) => value === text)) {
    form.elements.material.value = text;
  }
}
form.addEventListener("input", changed);
form.addEventListener("submit", (event) => event.preventDefault());
saySliders();
configure();
