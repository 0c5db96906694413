package form

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"
)

// compare says where our tree and that of a general YAML reader differ.
func compare(n *Node, y *yaml.Node) string {
	at := n.Place().String()
	switch {
	case y.Anchor != "" || y.Kind == yaml.AliasNode:
		return at + ": an anchor or alias got through"
	case n.kind == nothing:
		if y.Kind != yaml.ScalarNode || y.Tag != "!!null" {
			return at + ": nothing, but " + y.Value
		}
		return ""
	case n.line != y.Line || n.column != y.Column:
		return at + ": the other has it elsewhere"
	case n.kind == scalar:
		if y.Kind != yaml.ScalarNode || y.Value != n.text {
			return at + ": " + n.text + ", but " + y.Value
		}
		if plain := y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) == 0; plain != n.plain {
			return at + ": quoted, but plain, or the other way round"
		}
		return ""
	case n.kind == sequence && (y.Kind != yaml.SequenceNode || len(y.Content) != len(n.values)),
		n.kind == mapping && (y.Kind != yaml.MappingNode || len(y.Content) != 2*len(n.values)):
		return at + ": another shape"
	}
	for i, v := range n.values {
		other := y.Content[i*len(y.Content)/len(n.values)]
		if n.kind == mapping {
			if d := compare(n.keys[i], other); d != "" {
				return d
			}
			other = y.Content[2*i+1]
		}
		if d := compare(v, other); d != "" {
			return d
		}
	}
	return ""
}

// againstOracle reads with both and says what differs; ours may refuse more.
func againstOracle(data []byte) string {
	n, err := Parse("f", data)
	if err != nil {
		return ""
	}
	var y yaml.Node
	if err := yaml.Unmarshal(data, &y); err != nil {
		if bytes.ContainsRune(data, '?') {
			return "" // a known difference: YAML 1.2 lets words in brackets hold a question mark, YAML 1.1 does not
		}
		return "the other refuses it: " + err.Error()
	}
	return compare(n, y.Content[0])
}

// Every file of the shelf reads as go.yaml.in/yaml/v3, a general-purpose YAML
// library, reads it: same words, same shape, same places.
func TestShelfAgainstOracle(t *testing.T) {
	for _, f := range shelfFiles(t) {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Parse(f, data); err != nil {
			t.Errorf("%s: %v", f, err)
		}
		if d := againstOracle(data); d != "" {
			t.Errorf("%s: %s", f, d)
		}
	}
}

func shelfFiles(t testing.TB) []string {
	t.Helper()
	var all []string
	for _, pattern := range []string{"../shelf/*.yaml", "../shelf/constructions/*.yaml"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %v, %v", pattern, files, err)
		}
		all = append(all, files...)
	}
	return all
}

// The forms that YAML lets one value take, each accepted by ours.
var forms = []string{
	"a: 1\n", "a: 1", "- a\n- b\n", "a:\n- b\n- c\n", "a:\n  - b\n  -   c: 1\n      d: 2\n", "- - a\n  - b\n- c\n", "-\n  a: 1\n-\n",
	"a: x # c\nb: x#y\n", "# c\n\na: 1 \n  # c\nb: 2\n# c\n", "---\na: 1\n", "--- # c\na: 1\n...\n", "a: b\n  c\n\n  d\n\n\n  e\n", "a:\n  b c\n  d\n",
	"a: 'it''s'\n", "a: 'x\n  y\n\n  z'\n", "a: \"x\\\n  y\"\n", "a: \"x \\n \\t\\u00e9 \\\\ \\\" \\_ \"\n", "a: \"x  \n\n  y\\  \n  z\"\n", "'a b': \"c\" # d\n", "\"a\" : b\n", "a : b\n",
	"a: |\n  x\n   y\n\n  z\n\nb: 1\n", "a: |-\n  x\n\n", "a: |+\n  x\n\n\nb: 1\n", "a: >\n  x\n  y\n\n  z\n   w\n  v\n", "a: >-\n\n  x\n\n\n  y\n", "a: |\nb: 1\n", "- |\n a\n- >\n b\n c\n", "a: | # c\n  x\n",
	"a: {b: 1, 'c': [1, 2], d: {e: f}}\n", "a: [1, [2, 3], {b: c}, ]\n", "a: {}\nb: []\n", "a: {b: , c}\n", "a: [x y, 'z', \"w\"]\n", "a: [\n  1, # c\n  2\n  ]\n", "a: {b: x\n  y, c: 1}\n", "[a, b]\n", "{a: b}\n",
	"a: {b: c#d, e: f # g\n  }\n", "a: {\"b\":1}\n", "a: x:y\n", "a: -1\nb: -x\nc: ?x\nd: :x\n", "a: ~\nb: null\nc:\n", "a: [~, null]\n", "é: 'ü' \nü: x\n", "a: 1\r\nb: |\r\n  x\r\n  y\r\n", "hello\n", "hello\nthere\n", "'hello'\n", "a: x\\y\n",
	"- a: 1\n\n  b: 2\n-   - x\n", "a:\n    b:\n        c: d\n    e: f\ng: h\n", "a: \"\"\nb: ''\n", "a: [\"x\n  y\"]\n", "- # c\n  a: 1\n", "a: # c\n  b\n", "a: <<\n", "a: http://x.y/z\n", "a: 50% x\n", "a: b, c] d}\n",
}

func TestFormsAgainstOracle(t *testing.T) {
	for _, s := range forms {
		if _, err := Parse("f", []byte(s)); err != nil {
			t.Errorf("%q: %v", s, err)
		}
		if d := againstOracle([]byte(s)); d != "" {
			t.Errorf("%q: %s", s, d)
		}
	}
}

// What we accept, the general reader accepts and reads the same.
func FuzzAgainstOracle(f *testing.F) {
	for _, s := range forms {
		f.Add([]byte(s))
	}
	for _, file := range shelfFiles(f) {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		if i := strings.Index(string(data), "\n- "); i >= 0 {
			data = data[i+1:]
		}
		f.Add(data[:min(len(data), 600)])
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if d := againstOracle(data); d != "" {
			t.Errorf("%.300q: %.300s", data, d)
		}
	})
}

func BenchmarkParseShelf(b *testing.B) {
	var files [][]byte
	for _, f := range shelfFiles(b) {
		data, err := os.ReadFile(f)
		if err != nil {
			b.Fatal(err)
		}
		files = append(files, data)
	}
	for name, read := range map[string]func([]byte) error{
		"ours":  func(data []byte) error { _, err := Parse("f", data); return err },
		"other": func(data []byte) error { var y yaml.Node; return yaml.Unmarshal(data, &y) },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				for _, data := range files {
					if err := read(data); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}
