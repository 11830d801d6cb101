#pragma once

#include <string_view>

/// How a page looks: like one of a handbook. Nothing is fetched.
namespace fluewright::page {

inline constexpr std::string_view style_sheet = R"css(
:root { color-scheme: light dark; --paper: #ffffff; --ink: #1d1d1b; --soft: #55534d; --rule: #c9c5bb;
  --tint: #f4f2ec; --bad: #a3150c; --warning: #7a4b00; --good: #1d5c2e; --link: #174f86; }
@media (prefers-color-scheme: dark) { :root { --paper: #191a1b; --ink: #e7e5df; --soft: #b3b0a8;
  --rule: #4a4945; --tint: #232425; --bad: #ff9d92; --warning: #f0c070; --good: #8fd19e; --link: #9cc4ef; } }
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); }
body { margin: 0 auto; padding: 1.2rem 1.1rem 2rem; max-width: 58rem;
  font: 0.95rem/1.45 sans-serif; }
h1 { font-size: 1.55rem; line-height: 1.2; margin: 0 0 0.4rem; }
h2 { font-size: 1.2rem; margin: 2rem 0 0.6rem; padding-top: 0.5rem; border-top: 2px solid var(--ink); }
h3 { font-size: 1rem; margin: 1.2rem 0 0.3rem; }
h4 { font-size: 0.95rem; margin: 1rem 0 0.2rem; }
p, ul, pre { margin: 0.3rem 0 0.6rem; }
p.in { margin-left: 1.2rem; }
ul { padding-left: 1.2rem; }
li { margin: 0.15rem 0; overflow-wrap: anywhere; }
a { color: var(--link); }
code, pre { font-family: monospace; font-size: 0.88em; }
pre { overflow-x: auto; background: var(--tint); padding: 0.4rem 0.6rem; white-space: pre-wrap; }
.kicker { margin: 0; color: var(--soft); font-size: 0.85rem; overflow-wrap: anywhere; }
.lead { font-size: 1.05rem; font-weight: bold; }
nav ul { list-style: none; padding: 0; margin: 0.8rem 0; display: flex; flex-wrap: wrap; gap: 0.2rem 1rem; }
.wide { overflow-x: auto; margin: 0.4rem 0 0.8rem; }
table { border-collapse: collapse; font-size: 0.86rem; }
th, td { text-align: left; vertical-align: top; padding: 0.22rem 0.55rem; border-bottom: 1px solid var(--rule); }
thead th { color: var(--soft); font-weight: normal; vertical-align: bottom; }
tbody th { font-weight: normal; min-width: 6rem; }
td.good, td.warning, td.bad { white-space: nowrap; }
#checks p, #checks li { font-size: 0.86rem; margin: 0.1rem 0; }
th.number, td.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
td.note { color: var(--soft); padding-left: 1.6rem; }
.bad { color: var(--bad); font-weight: bold; }
.warning { color: var(--warning); font-weight: bold; }
.good { color: var(--good); font-weight: bold; }
.quiet { color: var(--soft); }
h3 .warning, h4 .warning { font-weight: inherit; }
figure { margin: 0.6rem 0 1rem; }
figure svg { display: block; width: 100%; height: auto; max-width: 900px; background: #ffffff;
  border: 1px solid var(--rule); }
figcaption { color: var(--soft); font-size: 0.86rem; margin-top: 0.3rem; }
footer { margin-top: 2rem; border-top: 1px solid var(--rule); color: var(--soft); font-size: 0.85rem; }
@page { margin: 16mm 15mm; }
@media print {
  :root { --paper: #ffffff; --ink: #000000; --soft: #444444; --rule: #bbbbbb; --tint: #f3f3f3;
    --bad: #8c0d05; --warning: #6b4200; --good: #174a25; --link: #000000; }
  body { max-width: none; padding: 0; font-size: 9.5pt; }
  nav { display: none; }
  .wide, pre { overflow: visible; }
  h2, h3, h4, figcaption { break-after: avoid; }
  #drawing { break-after: page; }
  figure, .wide, pre, li { break-inside: avoid; }
  figure svg { max-height: 235mm; border: 0; }
  p { orphans: 3; widows: 3; margin: 0.15rem 0 0.35rem; }
  h2 { margin-top: 1.3rem; }
  th, td { padding: 0.12rem 0.45rem; }
  /* Room kept for the last line, so that it never stands on a page of its own. */
  section:last-child { break-inside: avoid; padding-bottom: 12mm; margin-bottom: -12mm; }
  footer { margin-top: 0.6rem; }
  #checks p, #checks li, #assumed table { font-size: 8pt; }
  thead { display: table-header-group; }
}
)css";

} // namespace fluewright::page
