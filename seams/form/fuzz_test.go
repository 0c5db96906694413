package form_test

import (
	"errors"
	"testing"

	"bodkin/seams/form"
)

func FuzzDecode(f *testing.F) {
	for _, s := range []string{
		"tool: a\nkind: blade\nwidth: 1 5/8 in\n", "- tool: a\n", "sizes: {a: 1, b: 'x'}\n", "a: &b [*b]\n", "a: !t x\n", "when: |\n  a\n   b\n",
		"? x\n: y\n", "---\na\n---\nb\n", "k: \"\\u00e9\\\n x\"\n", "uses: [[[", "k: >-\n\n\n  a\n\n  b\n", "tool: 'é''", "<<: 1", "- - - a",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		for _, into := range []any{new(tool), new([]tool), new(form.Pairs[form.Text]), new([]form.Text)} {
			err := form.Decode("f", data, into)
			if err == nil {
				continue
			}
			fs, ok := errors.AsType[form.Faults](err)
			if !ok || len(fs) == 0 {
				t.Fatalf("an error that is not faults: %v", err)
			}
			switch v := into.(type) {
			case *tool:
				if v.Name != "" || v.Uses != nil || v.Sizes != nil || v.At.Line != 0 {
					t.Fatalf("half filled: %+v", v)
				}
			case *[]tool:
				if *v != nil {
					t.Fatalf("half filled: %+v", v)
				}
			case *form.Pairs[form.Text]:
				if *v != nil {
					t.Fatalf("half filled: %+v", v)
				}
			}
			for _, fault := range fs {
				if fault.Line < 1 || fault.Column < 1 || fault.Message == "" {
					t.Fatalf("a fault without place or words: %+v", fault)
				}
			}
			_ = err.Error()
		}
		var texts form.Pairs[form.Text]
		if form.Decode("f", data, &texts) == nil {
			for _, p := range texts {
				for i := range len([]rune(p.Value.Value)) + 1 {
					if at := p.Value.Place(i); at.Line < 1 || at.Column < 1 {
						t.Fatalf("character %d of %q stands at %v", i, p.Value.Value, at)
					}
				}
			}
		}
	})
}
