package formula_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"bodkin/seams/form"
	"bodkin/seams/formula"
)

type group struct {
	Weight float64 `expr:"weight"`
	Dots   int     `expr:"dots"`
	Fibre  string  `expr:"fibre"`
	Sheer  bool    `expr:"sheer"`
	Inner  int     // no tag: not seen by formulas
}

type room struct {
	Forms func(string) bool             `expr:"forms"`
	House func(string, float64) float64 `expr:"house"`
}

type facts struct {
	Cloth group `expr:"cloth"`
	Room  room  `expr:"room"`
}

func someFacts() facts {
	return facts{
		Cloth: group{Weight: 40, Dots: 2, Fibre: "silk", Sheer: true},
		Room: room{
			Forms: func(s string) bool { return s == "301" },
			House: func(name string, otherwise float64) float64 {
				if name == "plain" {
					return 13
				}
				return otherwise
			},
		},
	}
}

func someNames() formula.Names {
	return formula.NamesOf(facts{}).With(formula.Number, "first", "half").With(formula.Words, "neck").With(formula.Condition, "lined")
}

func someValues() formula.Values {
	v := formula.ValuesOf(someFacts())
	v["first"], v["half"], v["neck"], v["lined"] = 6.0, 0.5, "round", false
	return v
}

func text(s string) form.Text {
	return form.Text{Value: s, At: form.Place{File: "f", Line: 1, Column: 1}}
}

func TestNumbers(t *testing.T) {
	for s, want := range map[string]float64{
		"6": 6, "first + 1": 7, "first / 4": 1.5, "1/2": 0.5, "cloth.dots / 4": 0.5, "cloth.weight * half": 20,
		"max(cloth.dots, 1, half)": 2, "min(3, cloth.dots)": 2, "room.house('plain', 15)": 13, "room.house('other', cloth.dots)": 2,
		"room.house('other', 3 + 4)": 7, "cloth.sheer ? 6 : 9.5": 6, "lined ? 1 : 2": 2, "round(2.5)": 3, "ceil(2.1)": 3, "floor(-2.1)": -3,
		"abs(-2)": 2, "2 ** 3": 8, "-first ** 2": -36, "neck == 'round' ? 1 : 2": 1, "if lined {1} else {2}": 2,
		// Pythagorean triple and angles of half an equilateral triangle: closed forms.
		"sqrt(16)": 4, "hypot(3, 4)": 5, "hypot(cloth.dots, 0)": 2, "sin(30)": 0.5, "cos(60)": 0.5, "tan(45)": 1, "sin(180)": 0, "cos(90)": 0,
		"atan2(1, 1)": 45, "2 * pi": 2 * math.Pi, "sin(-90)": -1, "cos(-450)": 0,
	} {
		got, err := formula.New(text(s), formula.Number, someNames()).Number(someValues())
		if err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%s = %v, %v; want %v", s, got, err, want)
		}
	}
}

func TestConditions(t *testing.T) {
	for s, want := range map[string]bool{
		"cloth.sheer": true, "!lined": true, "cloth.dots == 2": true, "cloth.fibre in ['silk', 'wool']": true, "room.forms('504')": false,
		"!room.forms('504') && cloth.weight < 100": true, "first > 6 or half < 1": true, "not (first > 6)": true, "0 < half < 1": true,
	} {
		got, err := formula.New(text(s), formula.Condition, someNames()).Holds(someValues())
		if err != nil || got != want {
			t.Errorf("%s is %v, %v; want %v", s, got, err, want)
		}
	}
	if got, err := formula.New(form.Text{}, formula.Condition, someNames()).Holds(nil); err != nil || !got {
		t.Errorf("a condition left out is %v, %v; want true", got, err)
	}
	if got, err := formula.New(text("lined ? 'a' : neck"), formula.Words, someNames()).Word(someValues()); err != nil || got != "round" {
		t.Errorf("words: %q, %v", got, err)
	}
}

func TestFaults(t *testing.T) {
	const number, condition = formula.Number, formula.Condition
	for _, c := range []struct {
		yaml    string // the formula is the value of k
		kind    formula.Kind
		at      string // line:column
		message string
		nearest string
	}{
		{"k: cloth.wieght + 1", number, "1:10", `unknown name "wieght" after the point`, "weight"},
		{"k: 'clth.weight > 1'", condition, "1:5", `unknown name "clth"`, "cloth"},
		{"k: \"cloth.fibre == 'silk' && frist > 1\"", condition, "1:30", `unknown name "frist"`, "first"},
		{"k: 'cloth.fibre == ''silk'' && frist > 1'", condition, "1:32", `unknown name "frist"`, "first"},
		{"k: >\n  first +\n  secnd", number, "3:3", `unknown name "secnd"`, ""},
		{"k: cloth.Inner", number, "1:10", `unknown name "Inner"`, ""},
		{"k: first +", number, "1:10", "the formula ends too early", ""},
		{"k: frist / 2", number, "1:4", `unknown name "frist"`, "first"},
		{"k: 2 / (half / frist)", number, "1:16", `unknown name "frist"`, "first"},
		{"k: cloth.fibre / 2", number, "1:16", "invalid operation: / (mismatched types words and number)", ""},
		{"k: first = 6", condition, "1:10", "a single = stands here", "=="},
		{"k: first / 0", number, "1:10", "a division by zero", ""},
		{"k: first / (cloth.dots - 2) > 1", condition, "1:10", "a division by zero", ""},
		{"k: min(1 / (half - half), 5)", number, "1:10", "a division by zero", ""},
		{"k: sqrt(-1)", number, "1:4", "the square root of a negative number", ""},
		{"k: tan(90)", number, "1:4", "the tangent of a right angle", ""},
		{"k: 10 ** 400", number, "1:4", "comes out as no usable number", ""},
		{"k: cloth.sheer", number, "1:4", "a number is wanted here, and this gives true or false", ""},
		{"k: first", condition, "1:4", "true or false is wanted here, and this gives a number", ""},
		{"k: \"lined ? 1 : 'x'\"", number, "1:5", "a number is wanted here, and this gives now one kind", ""},
		{"k: cloth", number, "1:4", "a number is wanted here", ""},
		{"k: cloth.sheer + 1", number, "1:16", "invalid operation: + (mismatched types truth and number)", ""},
		{"k: cloth.fibre == 3", condition, "1:16", "invalid operation: == (mismatched types words and number)", ""},
		{"k: room.house('plain')", number, "1:9", "not enough arguments to call house", ""},
		{"k: now()", number, "1:4", `unknown name "now"`, ""},
		{"k: len(neck)", number, "1:4", `unknown name "len"`, ""},
		{"k: sum([1, 2])", number, "1:4", "the function sum is not used", ""},
		{"k: map([1], first)", number, "1:", "this is not arithmetic", ""},
		{"k: let x = 1; x", number, "1:8", "this is not arithmetic", ""},
		{"k: 1..3", number, "1:", "a range of numbers", ""},
		{"k: \"$env['first']\"", number, "1:5", "a $ has no meaning", ""},
		{"k: ' '", number, "1:", "a formula is missing here", ""},
	} {
		n, err := form.Parse("f", []byte(c.yaml+"\n"))
		if err != nil {
			t.Fatalf("%s: %v", c.yaml, err)
		}
		k, _ := n.At("k").Text()
		f := formula.New(k, c.kind, someNames())
		if c.kind == number {
			_, err = f.Number(someValues())
		} else {
			_, err = f.Holds(someValues())
		}
		fault, ok := errors.AsType[form.Fault](err)
		if !ok {
			t.Errorf("%s: no fault but %v", c.yaml, err)
			continue
		}
		at := fmt.Sprintf("%d:%d", fault.Line, fault.Column)
		if strings.HasSuffix(c.at, ":") {
			at = c.at
		}
		if at != c.at || !strings.HasPrefix(fault.Message, c.message) || (c.nearest != "" && fault.Nearest != c.nearest) {
			t.Errorf("%s: %s %q, nearest %q; want %s %q, %q", c.yaml, at, fault.Message, fault.Nearest, c.at, c.message, c.nearest)
		}
		if fault.Mend == "" && fault.Nearest == "" {
			t.Errorf("%s: %q tells no mend", c.yaml, fault.Message)
		}
		if fault.SourceLine == "" || fault.File != "f" {
			t.Errorf("%s: no source line in %+v", c.yaml, fault)
		}
	}
}

func TestTooLong(t *testing.T) {
	if err := formula.New(text(strings.Repeat("(", 5000)), formula.Number, someNames()).Check(); err == nil {
		t.Error("five thousand brackets compile")
	}
	if err := formula.New(text(strings.Repeat("(", 1900)+"1"+strings.Repeat(")", 1900)), formula.Number, someNames()).Check(); err != nil {
		t.Errorf("many brackets: %v", err)
	}
}

func TestMissingValue(t *testing.T) {
	v := someValues()
	delete(v, "first")
	for _, s := range []string{"first", "first + 1"} {
		if got, err := formula.New(text(s), formula.Number, someNames()).Number(v); err == nil {
			t.Errorf("%s without a value is %v", s, got)
		}
	}
}

func TestRefuses(t *testing.T) {
	n := someNames()
	for name, refused := range map[string]bool{
		"second": false, "trim_a": false, "first": true, "cloth": true, "min": true, "sqrt": true, "pi": true, "in": true, "2nd": true, "a-b": true, "": true,
	} {
		if got := n.Refuses(name); (got != "") != refused {
			t.Errorf("Refuses(%q) = %q", name, got)
		}
	}
	if formula.NamesOf(facts{}).Refuses("first") != "" {
		t.Error("With changed the names it was called on")
	}
}

func TestSharedBetweenGoroutines(t *testing.T) {
	f := formula.New(text("cloth.weight * 2"), formula.Number, someNames())
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			for i := range 50 {
				facts := someFacts()
				facts.Cloth.Weight = float64(i)
				if got, err := f.Number(formula.ValuesOf(facts)); err != nil || got != float64(2*i) {
					t.Errorf("%v, %v", got, err)
				}
			}
		})
	}
	wg.Wait()
}

func FuzzFormula(f *testing.F) {
	for _, s := range []string{"first + 1", "cloth.wieght", "1/0", "((((", "room.forms('x') ? 1 : 2", "sqrt(-1)", "é +", "a..b", "10**400", "$env"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if len(s) > 200 {
			return
		}
		got, err := formula.New(text(s), formula.Number, someNames()).Number(someValues())
		if err == nil && (math.IsNaN(got) || math.IsInf(got, 0)) {
			t.Fatalf("%q = %v", s, got)
		}
		if fault, ok := errors.AsType[form.Fault](err); err != nil && (!ok || fault.Message == "" || got != 0) {
			t.Fatalf("%q: %v, %v", s, got, err)
		}
	})
}

func BenchmarkCompile(b *testing.B) {
	b.ReportAllocs()
	names := someNames()
	for b.Loop() {
		if err := formula.New(text("cloth.weight > 1 && room.forms('301')"), formula.Condition, names).Check(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHolds(b *testing.B) {
	b.ReportAllocs()
	f, v := formula.New(text("cloth.weight > 1 && room.forms('301')"), formula.Condition, someNames()), someValues()
	for b.Loop() {
		if _, err := f.Holds(v); err != nil {
			b.Fatal(err)
		}
	}
}

// Each kind of value in place of another is mended in its own way, and a value
// that was not given is asked for.
func TestMendsOfKinds(t *testing.T) {
	for _, c := range []struct {
		formula string
		kind    formula.Kind
		mend    string
	}{
		{"lined", formula.Number, "x ? 6 : 10"},
		{"neck", formula.Number, "stand for numbers"},
		{"cloth", formula.Number, "one of its names after it"},
		{"lined ? 1 : 'x'", formula.Number, "both sides of the colon"},
		{"first", formula.Condition, "compare it"},
		{"neck", formula.Condition, "compare it"},
		{"lined", formula.Words, "'wide' : 'narrow'"},
	} {
		err := formula.New(text(c.formula), c.kind, someNames()).Check()
		fault, ok := errors.AsType[form.Fault](err)
		if !ok || !strings.Contains(fault.Mend, c.mend) {
			t.Errorf("%s as %s: %v, want a mend with %q", c.formula, c.kind, err, c.mend)
		}
	}
	_, err := formula.New(text("first"), formula.Number, someNames()).Number(formula.Values{})
	fault, ok := errors.AsType[form.Fault](err)
	if !ok || !strings.HasPrefix(fault.Message, "a value is missing") || !strings.Contains(fault.Mend, "give every name") {
		t.Errorf("no value: %v", err)
	}
}
