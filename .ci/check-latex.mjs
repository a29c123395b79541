// Used by .ci/check-latex: every formula of the given files must parse, and every environment must end. In a
// page of Markdown code is passed over, and what stands between formulas must not look like a piece of one.
import { readFileSync } from 'node:fs';
import katex from 'katex';

const block = /\\begin\{alignat\*\}[\s\S]*?\\end\{alignat\*\}/g;
const inline = /(?<!\\)\$((?:[^$\\]|\\[\s\S])*)\$/g;
const display = /^[ ]*\$\$\n([\s\S]*?)\n[ ]*\$\$$/gm;
const code = /^[ ]*```[\s\S]*?^[ ]*```|`[^`\n]*`/gm;
const address = /\]\([^)\s]*\)/g;
let formulas = 0;
let faults = 0;

function fault(file, text) {
    faults++;
    console.error(`${file}: ${text}`);
}

function parse(file, source, displayMode) {
    formulas++;
    try {
        katex.renderToString(source, { displayMode, throwOnError: true, strict: 'error' });
    } catch (error) {
        fault(file, `${error.message}\n    in ${source}`);
    }
}

function nesting(file, text) {
    const open = [];
    for (const [, verb, name] of text.matchAll(/\\(begin|end)\{([a-z*]+)\}/g)) {
        if (verb === 'begin') {
            open.push(name);
        } else if (open.pop() !== name) {
            fault(file, `\\end{${name}} does not end the environment that is open`);
            return;
        }
    }
    if (open.length > 0) {
        fault(file, `nothing ends ${open.join(', ')}`);
    }
    let depth = 0;
    for (const brace of text.replace(/\\[\s\S]/g, '')) {
        depth += brace === '{' ? 1 : brace === '}' ? -1 : 0;
        if (depth < 0) {
            break;
        }
    }
    if (depth !== 0) {
        fault(file, 'braces do not match');
    }
}

function pieces(file, prose) {
    for (const [piece] of prose.matchAll(/\S*(?:\p{L}|\*)_[\p{L}\p{N}({]\S*|\S+\^\S+|\S*(?:\$|\\(?!\|))\S*/gu)) {
        fault(file, `outside formulas: ${piece}`);
    }
}

const files = process.argv.slice(2);
for (const file of files) {
    let text = readFileSync(file, 'utf8');
    if (file.endsWith('.md')) {
        text = text.replace(code, '').replace(address, '](').replace(/\\\|/g, '|');
        for (const [, source] of text.matchAll(display)) {
            parse(file, source, true);
        }
        text = text.replace(display, '');
        for (const [, source] of text.matchAll(inline)) {
            parse(file, source, false);
        }
        for (const [piece] of text.replace(inline, '¤').matchAll(/\S*(?:[√∫] ?¤|¤!)\S*/gu)) {
            fault(file, `a sign that its formula lacks: ${piece}`);
        }
        pieces(file, text.replace(inline, ''));
        continue;
    }
    nesting(file, text);
    for (const [source] of text.matchAll(block)) {
        parse(file, source, true);
    }
    for (const [, source] of text.replace(block, '').matchAll(inline)) {
        parse(file, source, false);
    }
}

console.log(`${files.length} files, ${formulas} formulas, ${faults} faults`);
process.exitCode = faults > 0 || formulas === 0 ? 1 : 0;
