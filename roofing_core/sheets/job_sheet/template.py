"""The page of the typesetter: how each kind of block looks. No text of a plan stands in it.

What a plan says comes as data and is never read as markup. Nothing here reads a file or a package.
"""

from __future__ import annotations

TEMPLATE = r"""
#let sheet = json(bytes(sys.inputs.sheet))
#let (wide, high) = (a4: (210mm, 297mm), letter: (215.9mm, 279.4mm)).at(sheet.page_size)
#let paper = (a4: "a4", letter: "us-letter").at(sheet.page_size)
#let running = {
  let letters = (sheet.title + ": " + sheet.subtitle).clusters()
  if letters.len() > 110 { letters.slice(0, 107).join() + "..." } else { letters.join() }
}
#let hair = 0.4pt + luma(60%)

#set document(title: running, date: none)
#set text(
  lang: "en", font: "Libertinus Serif", size: 10pt, hyphenate: false,
  number-type: "lining", number-width: "tabular",
)
#set par(leading: 0.5em, spacing: 0.7em)
#set page(
  paper: paper,
  margin: (x: (wide - 180mm) / 2, top: 16mm, bottom: 14mm),
  header-ascent: 4mm,
  footer-descent: 4mm,
  header: context if counter(page).get().first() > 1 {
    set text(8pt)
    running
  },
  footer: context {
    set text(8pt)
    grid(
      columns: (1fr, auto),
      sheet.version,
      "Page " + counter(page).display("1 of 1", both: true),
    )
  },
)
#show heading.where(level: 1): set text(20pt)
#show heading.where(level: 2): it => block(
  width: 100%, above: 5mm, below: 2mm, inset: (bottom: 1mm), stroke: (bottom: 1.2pt), sticky: true,
  text(13pt, it.body),
)
#show heading.where(level: 3): it => block(
  above: 3.5mm, below: 1.6mm, sticky: true, text(10.5pt, it.body),
)
#set table.cell(breakable: false)

#let tick = box(width: 3mm, height: 3mm, stroke: 0.7pt, baseline: 0.4mm)

#let section(b) = heading(level: b.level, b.text)

#let prose(b) = {
  set text(8.5pt) if b.small
  for line in b.lines { par(line) }
}

#let facts(b) = {
  let half = calc.ceil(b.pairs.len() / 2)
  let column(pairs) = grid(
    columns: (5fr, 4fr),
    align: (left, right),
    inset: (x: 0pt, y: 2.2pt),
    stroke: (x, y) => (bottom: hair),
    ..pairs.flatten()
  )
  set text(9.5pt)
  block(breakable: half > 25, grid(
    columns: (1fr, 1fr), column-gutter: 10mm,
    column(b.pairs.slice(0, half)), column(b.pairs.slice(half)),
  ))
}

#let plain(b) = {
  let ticks = if b.to_tick { ("done",) } else { () }
  // Short columns share the width by what is in them; a long one takes what the others leave.
  let longest = range(b.headings.len()).map(k => {
    calc.max(4, b.headings.at(k).len(), ..b.rows.map(row => row.at(k).len()))
  })
  let widths = if longest.sum() < 100 { longest.map(n => n * 1fr) } else {
    longest.map(n => if n == calc.max(..longest) { 1fr } else { auto })
  }
  // Running text is set larger than what is looked up.
  set text(if calc.max(..longest) < 90 { 9pt } else { 9.5pt })
  // A short table is not torn apart.
  block(breakable: b.rows.len() > 9, width: 100%, table(
    columns: (auto,) * ticks.len() + widths,
    align: (left,) * ticks.len() + b.sides.map(side => if side == "right" { right } else { left }),
    inset: (x: 4pt, y: 2.6pt),
    stroke: (x, y) => (bottom: if y == 0 { 1.2pt } else { hair }),
    table.header(..ticks, ..b.headings),
    ..b.rows.map(row => (tick,) * ticks.len() + row).flatten()
  ))
  if b.note != "" { block(above: 2mm, text(8.5pt, b.note)) }
}

#let notices(b) = {
  let entry(one) = [#strong(one.head + ".") #one.says #emph(one.source)]
  set text(9pt)
  let all = list(spacing: 0.65em, ..b.entries.map(entry))
  if b.urgent { block(width: 100%, stroke: 2pt, inset: 3mm, all) } else { all }
}

#let drawn(one) = image(
  bytes(one.svg), format: "svg", width: one.width * 1mm, alt: one.title + ". " + one.says,
)

#let pictures(b) = {
  for one in b.drawings {
    if one.across {
      page(flipped: true, margin: (x: (high - 245mm) / 2, top: 15mm, bottom: 13mm), drawn(one))
    } else {
      block(above: 2mm, below: 2mm, breakable: false, drawn(one))
    }
  }
}

#let writers = (
  section: section, prose: prose, facts: facts, grid: plain, notices: notices, pictures: pictures,
)

#heading(level: 1, sheet.title)
#text(12pt, sheet.subtitle)

#for b in sheet.blocks { writers.at(b.kind)(b) }
"""
