// node pages.mjs BROWSER JUDGE FILE...: a line for each thing that is wrong with a page; ends with 1 if there is one.
// JUDGE is validator, axe, width or all; all prints those called card-* on A4 and Letter, too.
import { readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import puppeteer from 'puppeteer-core';

const [browser, judge, ...files] = process.argv.slice(2);
const asked = (name) => judge === 'all' || judge === name;
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let bad = 0;
const say = (file, text) => {
    bad = 1;
    console.log(`${basename(file)}: ${text.replace(/\s+/g, ' ').slice(0, 300)}`);
};

if (asked('validator')) {
    // the style of a page is in it, and titles are sentences
    const rules = { 'no-inline-style': 'off', 'long-title': 'off', 'no-trailing-whitespace': 'off' };
    const validator = new HtmlValidate({ extends: ['html-validate:recommended'], rules });
    for (const file of files) {
        const report = await validator.validateString(readFileSync(file, 'utf8'));
        for (const one of report.results.flatMap((r) => r.messages)) {
            say(file, `validator: ${one.line}:${one.column}: ${one.message} (${one.ruleId})`);
        }
    }
}

const seen = await puppeteer.launch({ executablePath: browser, args: ['--no-sandbox', '--disable-gpu'] });
try {
    for (const file of files) {
        const page = await seen.newPage();
        for (const value of ['light', 'dark']) {
            for (const width of [390, 1280]) {
                await page.setViewport({ width, height: 900 });
                await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value }]);
                await page.goto(pathToFileURL(resolve(file)).href);
                const on = `${value}, ${width} pixels`;
                const wide = await page.evaluate(() => document.documentElement.scrollWidth);
                if (asked('width') && wide > width) {
                    say(file, `width: scrolls sideways, ${wide} wide (${on})`);
                }
                if (asked('axe')) {
                    await page.evaluate(axe);
                    const found = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
                    for (const one of found.violations) {
                        say(file, `axe: ${one.help} (${one.id}, ${on}): ${one.nodes[0].html}`);
                    }
                }
            }
        }
        if (judge === 'all' && basename(file).startsWith('card-')) {
            for (const format of ['A4', 'Letter']) {
                const path = file.replace('.html', `-${format}.pdf`);
                await page.pdf({ path, format, preferCSSPageSize: format === 'A4' });
            }
        }
        await page.close();
    }
} finally {
    await seen.close();
}
process.exit(bad);
