package sheets

import (
	"strings"

	"github.com/yuin/goldmark/ast"
)

// prose are the lines of a block of words as she wrote them, with HTML made
// text and no line that starts a block of its own: such a line joins the one
// before it, which reads the same.
func (r rewriter) prose(n ast.Node) []string {
	html := r.html(n)
	var out []string
	segments := n.Lines()
	for i := range segments.Len() {
		seg := segments.At(i)
		var b strings.Builder
		for at := seg.Start; at < seg.Stop; {
			if stop, ok := html[at]; ok {
				stop = min(stop, seg.Stop)
				b.WriteString(string(plain(string(r.source[at:stop]))))
				at = stop
				continue
			}
			b.WriteByte(r.source[at])
			at++
		}
		line := strings.TrimLeft(visible(b.String()), " \t")
		if i == segments.Len()-1 {
			line = strings.TrimRight(line, " \t")
		}
		last := len(out) - 1
		switch safe := ownStart(line); {
		case safe == line || last >= 0 && hardBreak(out[last]):
			out = append(out, safe)
		case last >= 0:
			out[last] = strings.TrimRight(out[last], " \t") + " " + line
		default:
			out = append(out, safe)
		}
	}
	return out
}

// hardBreak tells whether a line ends in one: two spaces, or a backslash that
// is not itself escaped.
func hardBreak(line string) bool { return strings.HasSuffix(line, "  ") || escapes(line) }

// escapes tells whether a text ends in a backslash that is not itself escaped.
func escapes(text string) bool {
	return (len(text)-len(strings.TrimRight(text, `\`)))%2 == 1
}

// html is where raw HTML starts and stops in the source, a part for each line
// it runs over.
func (r rewriter) html(n ast.Node) map[int]int {
	found := map[int]int{}
	_ = ast.Walk(n, func(m ast.Node, entering bool) (ast.WalkStatus, error) {
		if raw, ok := m.(*ast.RawHTML); ok && entering {
			for i := range raw.Segments.Len() {
				seg := raw.Segments.At(i)
				found[seg.Start] = seg.Stop
			}
		}
		return ast.WalkContinue, nil
	})
	return found
}

// visible is a line without its end and without control characters.
func visible(line string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' || r == 0x7F {
			return -1
		}
		return r
	}, line)
}

// ownStart is lineStart for text that still has its own marks. A line of prose
// can begin with the start of a block where it was indented far or stood
// lazily after a list or a quote.
func ownStart(line string) string {
	first, _, _ := strings.Cut(line, " ")
	bare := strings.NewReplacer(" ", "", "\t", "").Replace(line)
	switch {
	case first == "":
		return line
	case first == "*", strings.Trim(first, "#") == "" && len(first) <= 6,
		strings.HasPrefix(first, "~~~"),
		strings.HasPrefix(first, "```") && !strings.Contains(strings.TrimLeft(line, "`"), "`"),
		len(bare) >= 3 && (strings.Trim(bare, "*") == "" || strings.Trim(bare, "_") == ""),
		opensHTML(line):
		return `\` + line
	}
	if cut := strings.IndexByte(line, '\t'); cut > 0 && cut < len(first) {
		return lineStart(line[:cut]) + line[cut:]
	}
	return lineStart(line)
}

// opensHTML tells whether a line could start an HTML block; an address between
// angle brackets is none.
func opensHTML(line string) bool {
	if len(line) < 2 || line[0] != '<' {
		return false
	}
	if strings.IndexByte("!?/", line[1]) >= 0 {
		return true
	}
	inside, _, closed := strings.Cut(line[1:], ">")
	return !closed || !strings.ContainsAny(inside, ":@") || strings.Contains(inside, " ")
}
