package formula

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/expr-lang/expr/vm"

	"bodkin/seams/form"
)

// maxBytes bounds the depth to which brackets can be nested in a formula.
const maxBytes = 4000

// Formula is a text of one kind over some names, compiled at first use.
type Formula struct {
	text    form.Text
	kind    Kind
	names   Names
	once    sync.Once
	program *vm.Program
	err     error
}

// New takes a text to be read as a formula of a kind; nothing is compiled yet.
func New(text form.Text, kind Kind, names Names) *Formula {
	return &Formula{text: text, kind: kind, names: names}
}

// Text is the formula as written.
func (f *Formula) Text() form.Text { return f.text }

// Check compiles the formula. The error is a [form.Fault].
func (f *Formula) Check() error {
	f.once.Do(f.compile)
	return f.err
}

// Number is the formula's number. It is an error where the formula does not
// compile, divides by zero, or comes out infinite or as no number at all.
func (f *Formula) Number(v Values) (float64, error) {
	out, err := f.run(v, Number)
	if err != nil {
		return 0, err
	}
	x := out.(float64)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, f.whole("comes out as no usable number", "", "look for a power or a tangent that grows without bound")
	}
	return x + 0, nil
}

// Holds is whether the condition is true. A condition that was left out holds.
func (f *Formula) Holds(v Values) (bool, error) {
	if f.text.IsZero() {
		return true, nil
	}
	out, err := f.run(v, Condition)
	if err != nil {
		return false, err
	}
	return out.(bool), nil
}

// Word is the word that the formula gives.
func (f *Formula) Word(v Values) (string, error) {
	out, err := f.run(v, Words)
	if err != nil {
		return "", err
	}
	return out.(string), nil
}

func (f *Formula) run(v Values, as Kind) (any, error) {
	if f.kind != as {
		panic(fmt.Sprintf("formula: %s is %s, used as %s", f.text.At, f.kind, as))
	}
	if err := f.Check(); err != nil {
		return nil, err
	}
	out, err := vm.Run(f.program, map[string]any(v))
	if err != nil {
		return nil, f.fault(err)
	}
	if reflect.TypeOf(out) != reflect.TypeOf(f.zero()) {
		return nil, f.whole("a value is missing for one of its names", "", "give every name in it a value, or take the name out")
	}
	return out, nil
}

func (f *Formula) zero() any {
	return [...]any{0.0, false, ""}[f.kind]
}

// whole is a fault of the formula as a whole.
func (f *Formula) whole(message, nearest, mend string) form.Fault {
	return f.text.Fault(0, utf8.RuneCountInString(f.text.Value), message, nearest, mend)
}

func (f *Formula) compile() {
	if strings.TrimSpace(f.text.Value) == "" {
		f.err = f.whole("a formula is missing here", "", "write "+f.kind.String())
		return
	}
	if len(f.text.Value) > maxBytes {
		f.err = f.whole("the formula is too long", "", "take it apart into several sizes")
		return
	}
	program, refused, err := f.names.compile(f.text.Value)
	switch {
	case refused.why != "":
		f.err = f.text.Fault(refused.from, max(1, refused.to-refused.from), refused.why, refused.nearest, refused.mend)
	case err != nil:
		f.err = f.fault(err)
	case program.Node().Type() != reflect.TypeOf(f.zero()):
		f.err = f.whole(f.kind.String()+" is wanted here, and this gives "+said(program.Node().Type()), "", f.kind.instead(program.Node().Type()))
	default:
		f.program = program
	}
}

// instead is how a formula is mended that gives another kind of value.
func (k Kind) instead(gives reflect.Type) string {
	switch {
	case said(gives) == group:
		return "write a point and one of its names after it"
	case said(gives) == mixed:
		return "let both sides of the colon give " + k.String()
	case k == Condition:
		return "compare it with something, as in x > 6 or x == 'silk'"
	case k == Words:
		return "write the words in quotes, or ask first: x > 6 ? 'wide' : 'narrow'"
	case gives == reflect.TypeFor[bool]():
		return "ask with it and give both numbers: x ? 6 : 10"
	}
	return "write a number, or names that stand for numbers, as in x + 6"
}

// What is said of a formula that gives no one kind of value.
const (
	group = "a group of values"
	mixed = "now one kind of value, now another"
)

func said(t reflect.Type) string {
	switch t {
	case reflect.TypeFor[float64]():
		return Number.String()
	case reflect.TypeFor[bool]():
		return Condition.String()
	case reflect.TypeFor[string]():
		return Words.String()
	}
	if t != nil && t.Kind() == reflect.Map {
		return group
	}
	return mixed
}
