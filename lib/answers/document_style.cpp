#include "answers/document_style.hpp"

#include <string_view>

namespace pelage::io {

namespace {

/// One sheet of A4; a book is bound from whatever paper the salon has.
constexpr std::string_view a4 = "@page{size:A4;margin:11mm 13mm}";
constexpr std::string_view any_paper = "@page{margin:11mm 13mm}";

constexpr std::string_view style_sheet =
    "*{box-sizing:border-box}"
    "body{font:10.2pt/1.32 sans-serif;color:#111;margin:0 auto;max-width:184mm;"
    "overflow-wrap:break-word}"
    "h1{font-size:15pt;margin:0 0 2mm;border-bottom:.5mm solid #111;padding-bottom:1mm}"
    "h2{font-size:11.2pt;margin:2.6mm 0 .6mm}"
    "p{margin:0 0 .8mm}"
    "ul,ol{margin:0 0 .8mm;padding-left:5.5mm}"
    "li{margin:0 0 .4mm}.under{display:inline-block;padding-left:3mm}"
    "ul.boxes{list-style:none;padding-left:0}"
    "ul.boxes li{padding-left:6mm;text-indent:-6mm}"
    "ul.boxes li::before{content:\"\";display:inline-block;width:3.2mm;height:3.2mm;"
    "border:.35mm solid #111;margin-right:2.6mm;vertical-align:-.4mm;text-indent:0}"
    ".pair{display:grid;grid-template-columns:1fr 1fr;column-gap:8mm}"
    ".sign{display:grid;grid-template-columns:2fr 1fr 2fr;column-gap:6mm;margin-top:8mm}"
    ".sign div{border-top:.3mm solid #111;padding-top:.6mm;font-size:9pt}"
    "footer{margin-top:2.6mm;font-size:8.4pt;color:#333}"
    "table{border-collapse:collapse;margin:.8mm 0 1.6mm}"
    "th,td{text-align:left;vertical-align:top;padding:.5mm 4mm .5mm 0;border-bottom:.15mm solid "
    "#bbb}"
    "th{border-bottom:.3mm solid #111}"
    ".n{text-align:right;white-space:nowrap}.ways .n{white-space:normal}.ways "
    "td:nth-child(2){min-width:38mm}"
    "thead{display:table-header-group}"
    "tr{break-inside:avoid}"
    ".caution{border-left:1mm solid #111;padding-left:2mm;font-weight:bold}"
    ".mild{font-weight:normal;border-left-width:.4mm}"
    ".between{border-top:.3mm solid #111;border-bottom:.3mm solid #111;margin:.6mm 0 1mm;"
    "padding:.3mm 0 .3mm 5.5mm;font-weight:bold}"
    ".tick{display:inline-block;width:3.2mm;height:3.2mm;border:.35mm solid #111;"
    "vertical-align:-.4mm}"
    ".stop{border:1.4mm solid #111;padding:2mm 3mm;margin:2mm 0 3mm;font-size:1.1em}"
    ".stop h2{font-size:24pt;line-height:1;letter-spacing:.12em;margin:0 0 1.6mm}"
    ".hid{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}"
    ".d{white-space:nowrap}"
    ".plain{list-style:none;padding-left:3mm}"
    ".views{margin:2mm 0}"
    // as wide as each is drawn: one scale in a row
    ".row{display:flex;justify-content:center;align-items:end;gap:4mm;margin:0 auto 2mm}"
    "figure{margin:0;break-inside:avoid}"
    "section:not(.views)>figure:not(.chart){max-width:100mm}"
    ".chart{max-width:138mm}"
    "figcaption{text-align:center;font-size:9pt}"
    "@media "
    "print{section:not(.flows),li{break-inside:avoid}h2,p:has(+table){break-after:avoid}"
    ".views{break-inside:auto}.row{break-inside:avoid;margin-bottom:0}"
    "figcaption{font-size:8pt}.small table{break-inside:avoid}"
    ".small section{break-inside:auto}.small .views{width:80%}"
    ".tight{font-size:9.8pt;line-height:1.26}.tighter{font-size:9pt;line-height:1.2}"
    ".tighter h2{margin:1.4mm 0 .3mm}.tighter p,.tighter li{margin-bottom:.3mm}"
    ".tighter .sign{margin-top:6mm}"
    ".views{width:var(--on-paper,100%);margin:1mm auto}.page,.own{break-before:page}"
    ".own .row{max-width:var(--w)!important}"
    ".own .row:first-child{display:block;max-width:none!important;break-inside:auto}"
    ".own .row:first-child figure{width:var(--w);margin:0 auto}"
    ".chart svg{max-height:195mm}}"
    "a{color:inherit}.small{font-size:8.6pt;line-height:1.2}"
    "@media screen{body{padding:8mm}}"
    "@media screen and (min-width:150.1mm){main:has(>.own){display:flex;flex-direction:column}"
    "main>h1{order:-3}main>h1+*,main>h1+*+section:has(>h2+ul.boxes){order:-2}.own{order:-1}}"
    "@media screen and (min-width:260mm){.views{position:relative;left:50%;width:min(94vw,400mm);"
    "transform:translateX(-50%)}}"
    "@media screen and "
    "(max-width:150mm){body{padding:3mm}table{font-size:9pt}"
    "th,td{padding-right:1.4mm}"
    // a row of many cells is a few lines, each cell after its heading
    ".many,.many tbody,.many tr{display:block}.many thead{display:none}"
    ".many tr{border-bottom:.15mm solid #bbb;padding:.8mm 0}"
    ".many td{display:inline;border:0;padding:0 2mm 0 0;text-align:left}"
    ".many td:first-child{font-weight:bold}"
    ".many td[data-h]::before{content:attr(data-h) \" \";font-weight:normal;color:#555}"
    ".pair{grid-template-columns:1fr}.row{display:block;max-width:none!important}"
    "figure{margin-bottom:2mm}"
    // on a telephone the steps come first
    ".one-dog main{display:flex;flex-direction:column}.one-dog .views{order:1}"
    ".one-dog .sign,.one-dog footer{order:2}}"
    "@media screen and (prefers-color-scheme:dark){:root{color-scheme:dark}"
    "body{background:#1d1d1b;color:#e9e7e0}"
    "h1,th,.caution,.between,.stop,.tick,.sign div,ul.boxes "
    "li::before{border-color:#e9e7e0}footer,.many td[data-h]::before{color:#c4c2ba}}";

}  // namespace

std::string page_style(bool book) {
    return std::string(book ? any_paper : a4) + std::string(style_sheet);
}

}  // namespace pelage::io
