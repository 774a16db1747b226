// Asking the service: addresses of the public paths, and answers of which only the last one counts.

/** Where the service is: these files are served beside its paths. */
export const HERE = new URL(".", import.meta.url);

/** What kept a question from its answer: a problem (RFC 9457), or no answer at all. */
export class Refusal extends Error {
  constructor(problem) {
    super(problem.detail || problem.title);
    this.problem = problem;
    this.errors = problem.errors || [];
  }
}

/** Give the address of a path with a query; parameters without a text are left out. */
export function address(path, parameters, service = HERE) {
  const there = new URL(path, service);
  for (const [name, text] of Object.entries(parameters)) {
    if (text !== undefined && text !== null && `${text}`.trim() !== "") {
      there.searchParams.set(name, `${text}`.trim());
    }
  }
  return there;
}

/** Ask for an answer as it came; a Refusal where there is none. */
export async function ask(there, options = {}) {
  let answer;
  try {
    answer = await fetch(there, { credentials: "omit", ...options });
  } catch (failure) {
    if (failure.name === "AbortError") throw failure;
    throw new Refusal({
      title: "No answer",
      detail: `No answer from ${new URL(there).origin}. Either it is not running, or its operator has not allowed this page to ask.`,
    });
  }
  if (answer.ok) return answer;
  const isProblem = (answer.headers.get("Content-Type") || "").startsWith("application/problem+json");
  throw new Refusal(
    isProblem ? await answer.json() : { title: `Status ${answer.status}`, detail: `The service answered ${answer.status}.` },
  );
}

/** Questions of which only the last one counts: the one before is given up, its answer dropped. */
export class Latest {
  #turn = 0;
  #controller = null;

  /** Run `work(signal)`; gives undefined where another question has been asked since. */
  async only(work) {
    this.drop();
    const turn = this.#turn;
    this.#controller = new AbortController();
    try {
      const result = await work(this.#controller.signal);
      return turn === this.#turn ? result : undefined;
    } catch (failure) {
      if (turn !== this.#turn) return undefined;
      throw failure;
    }
  }

  /** Drop whatever was asked. */
  drop() {
    this.#turn += 1;
    this.#controller?.abort();
  }
}

/** Give a function that waits until nobody has called it for a while, and then runs once. */
export function settled(run, milliseconds) {
  let waiting;
  const later = (...given) => {
    clearTimeout(waiting);
    waiting = setTimeout(() => run(...given), milliseconds);
  };
  later.never = () => clearTimeout(waiting);
  return later;
}
