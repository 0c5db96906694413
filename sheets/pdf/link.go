package pdf

import (
	"net/url"
	"strings"

	"github.com/yuin/goldmark/util"
	"golang.org/x/text/unicode/norm"
)

// targetOf is where a Markdown link may lead from paper: within the sheet, or
// to the net by http, https or mailto. Anything else, javascript: above all,
// is no link, and its words are shown as words.
func targetOf(destination []byte) target {
	d := unescape(string(destination))
	if id, ok := strings.CutPrefix(d, "#"); ok {
		if plain, err := url.PathUnescape(id); err == nil {
			id = plain
		}
		return target{id: norm.NFC.String(id)}
	}
	scheme, _, ok := strings.Cut(d, ":")
	if !ok {
		return target{}
	}
	switch strings.ToLower(scheme) {
	case "http", "https", "mailto":
		return target{uri: string(util.URLEscape([]byte(d), false))}
	}
	return target{}
}
