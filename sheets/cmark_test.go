package sheets

import (
	"bytes"
	"fmt"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"bodkin/sheets/sheettest"
)

// cmark is another implementation of CommonMark, in C, from Debian. It knows no
// tables and no boxes, so headings, quotes, images and emphasis are compared:
// what it makes of a sheet has as many of each as goldmark finds. A machine of
// one's own may lack it; under CI it must be there.
func TestAnotherReaderOfMarkdown(t *testing.T) {
	path := sheettest.Program(t, "cmark")
	kinds := regexp.MustCompile(`(?m)<(heading level="\d"|block_quote|image|code_block|html_block|html_inline|list type="\w+" tight="\w+"|list type="\w+")`)
	for _, name := range fixtures(t) {
		for _, r := range Readers() {
			t.Run(name+"/"+r, func(t *testing.T) {
				p := fixture(t, name)
				p.Notes = "" // what the maker writes of her own has tests of its own
				md := Compose(p, Options{For: Reader(r), FiguresAt: "figures/"}).Markdown
				cmd := exec.CommandContext(t.Context(), path, "-t", "xml")
				cmd.Stdin = bytes.NewReader(md)
				out, err := cmd.Output()
				if err != nil {
					t.Fatal(err)
				}
				got := map[string]int{}
				for _, k := range kinds.FindAllString(string(out), -1) {
					got[strings.Fields(k[1:])[0]]++
					if strings.HasPrefix(k, "<heading") {
						got[k[1:]]++
					}
				}
				want := map[string]int{}
				for _, node := range skeleton(md) {
					_, kind, _ := strings.Cut(node, " ")
					switch {
					case strings.HasPrefix(kind, "heading "):
						want["heading"]++
						want[fmt.Sprintf(`heading level="%s"`, kind[8:])]++
					case kind == "Blockquote":
						want["block_quote"]++
					case kind == "Image":
						want["image"]++
					case strings.HasPrefix(kind, "list "):
						want["list"]++
					}
				}
				if len(want) < 4 {
					t.Fatalf("the sheet has only %v", want)
				}
				for k := range got {
					if want[k] == 0 {
						t.Errorf("cmark finds %d of %s", got[k], k)
					}
				}
				for k, n := range want {
					if got[k] != n {
						t.Errorf("cmark finds %d of %s, goldmark %d", got[k], k, n)
					}
				}
			})
		}
	}
}
