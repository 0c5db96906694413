package sheets

import (
	"bytes"
	"encoding/base64"
)

// Inline is the Markdown with every figure inside it, as an address that holds
// its own data (RFC 2397), for Markdown that travels alone. A line with a
// figure is then as long as the figure.
func (s Sheet) Inline() []byte {
	lines := bytes.SplitAfter(s.Markdown, []byte("\n"))
	for _, d := range s.Figures {
		end := []byte("](" + destination(d.Address) + ")\n")
		data := "data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(d.Figure.SVG())
		for i, line := range lines {
			if bytes.HasPrefix(line, []byte("![")) && bytes.HasSuffix(line, end) {
				lines[i] = append(bytes.TrimSuffix(line, end), "]("+data+")\n"...)
			}
		}
	}
	return bytes.Join(lines, nil)
}
