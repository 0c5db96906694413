package sheets

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Every word that a sheet says of its own stands in the wording, where a file can
// say it another way: no other file of the package has a sentence in a string,
// told by a space between words or by a capital letter, but for what it says to
// programmers.
func TestWordsStandInTheWording(t *testing.T) {
	// Not words of the sheet: names of tools as the plan has them, a value of the
	// table that programs read, and what is said of a fault in a file.
	others := map[string]bool{"needle board": true, "sleeve board": true, "under layer": true, "this sentence has no values": true, "this sentence has {": true}
	sentence := regexp.MustCompile(`\p{L}{2,}[.:,;]? \p{L}|^\p{Lu}\p{Ll}+[.:]?$`)
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	read := 0
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") || f.Name() == "wording.go" {
			continue
		}
		read++
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, f.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec, *ast.Field:
				return false
			case *ast.CallExpr:
				switch fun := n.Fun.(type) {
				case *ast.Ident:
					return fun.Name != "panic"
				case *ast.SelectorExpr:
					x, ok := fun.X.(*ast.Ident)
					return !ok || !(x.Name == "fmt" && fun.Sel.Name == "Errorf" || x.Name == "regexp" || x.Name == "form" || fun.Sel.Name == "Fault")
				}
			case *ast.BasicLit:
				if n.Kind != token.STRING {
					return true
				}
				if text, err := strconv.Unquote(n.Value); err == nil && sentence.MatchString(text) && !others[text] {
					t.Errorf("%s: %q does not stand in the wording", set.Position(n.Pos()), text)
				}
			}
			return true
		})
	}
	if read < 20 {
		t.Errorf("only %d files read", read)
	}
}
