package pdf

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"
)

// fortySteps is the sample with its steps told eight times over.
func fortySteps() []byte {
	head, rest, _ := bytes.Cut(sampleMarkdown, []byte("### 1."))
	steps, tail, _ := bytes.Cut(rest, []byte("## Why this order"))
	var b strings.Builder
	b.Write(head)
	for i := range 8 {
		for k, s := range bytes.Split(append([]byte("1."), steps...), []byte("### ")) {
			_, words, _ := bytes.Cut(s, []byte(". "))
			fmt.Fprintf(&b, "### %d. %s", 5*i+k+1, words)
		}
	}
	b.WriteString("## Why this order")
	b.Write(tail)
	return []byte(b.String())
}

// BenchmarkFortySteps is the whole way from Markdown to PDF bytes; the goal is
// under 100 ms.
func BenchmarkFortySteps(b *testing.B) {
	md, o := fortySteps(), sampleOptions()
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, md, o); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFortyStepsLayout is the way to the drawing list alone.
func BenchmarkFortyStepsLayout(b *testing.B) {
	md, o := fortySteps(), sampleOptions()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := lay(md, &o); err != nil {
			b.Fatal(err)
		}
	}
}
