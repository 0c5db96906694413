// Package html writes Markdown as one page of HTML for bench, desk and phone.
// In go the Markdown of a sheet and its figures; out comes a file that needs
// no other: figures, style and script are inside it. The one idea is that
// nothing in the words can act: HTML is shown as text, and the page's own
// policy lets no script run but the one whose hash it names. The script only
// remembers ticks; without it the page reads, prints and ticks the same.
// Start at Write; package pdf draws the same Markdown on paper.
package html

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"html/template"
	"io"
	"maps"
	"slices"
	"strings"

	"bodkin/sheets/figure"
)

// Options say how the page is written. The zero value is good.
type Options struct {
	// Title stands in the window's bar; empty means the words of the first
	// heading.
	Title  string
	Author string
	Lang   string // a language tag such as en or vi-VN; empty means en

	// Figures are drawn where an image's destination is their key.
	Figures map[string]figure.Figure

	// LargeSteps sets headings of level 3 that begin with a number large, for
	// numbers that are called out.
	LargeSteps bool

	// Key is under what name the browser keeps the ticks; empty means a name
	// made of the Markdown, so that a sheet that has changed begins anew.
	Key string
}

// Write writes CommonMark with tables, task lists and strikethrough as HTML.
// Headings of level 2 open sections and are listed at the top; one of level 3
// opens a part, which print keeps on one page where it fits. Boxes can be
// ticked. Raw HTML is shown as text, images that are no figures as their
// alternative text; links lead to headings, http, https and mailto, others are
// words only. Bytes that are not UTF-8 become U+FFFD.
//
// Errors are figures that cannot be drawn, a language that is no tag, and w's
// own.
func Write(w io.Writer, markdown []byte, o Options) error {
	if o.Lang == "" {
		o.Lang = "en"
	}
	if strings.Trim(o.Lang, "-0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return fmt.Errorf("%q is not a language tag; give one such as en or vi-VN", o.Lang)
	}
	for _, key := range slices.Sorted(maps.Keys(o.Figures)) {
		if err := o.Figures[key].Check(); err != nil {
			return fmt.Errorf("figure under %q: %w", key, err)
		}
	}
	if o.Key == "" {
		sum := sha256.Sum256(markdown)
		o.Key = hex.EncodeToString(sum[:8])
	}
	body, err := read(markdown, o.Figures)
	if err != nil {
		return err
	}
	if o.Title == "" {
		o.Title = body.title
	}
	assets, err := readAssets()
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := assets.frame.Execute(&out, frame{
		Options: o, Contents: body.contents, Tasks: body.tasks, Steps: body.steps,
		// These are ours: the body is escaped word by word, style and script
		// are files of this package.
		Body: template.HTML(body.html), Style: template.CSS(assets.style), Script: template.JS(assets.script),
		StyleHash: hashOf(assets.style), ScriptHash: hashOf(assets.script),
	}); err != nil {
		return err
	}
	_, err = w.Write(out.Bytes())
	return err
}

// frame is what the page's template is filled with.
type frame struct {
	Options
	Contents              []entry
	Tasks                 int
	Steps                 bool
	Body                  template.HTML
	Style                 template.CSS
	Script                template.JS
	StyleHash, ScriptHash string
}

// entry is a line of the contents.
type entry struct{ ID, Words string }

// hashOf is a source as a content security policy names it
// (Content Security Policy Level 3, W3C, section 2.3.1).
func hashOf(source string) string {
	sum := sha256.Sum256([]byte(source))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
