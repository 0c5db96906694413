package formula

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"github.com/expr-lang/expr/types"
	"github.com/expr-lang/expr/vm"
)

// Kind is what a formula gives, or what a name stands for.
type Kind int

const (
	Number    Kind = iota // float64
	Condition             // bool
	Words                 // string
)

func (k Kind) String() string {
	return [...]string{"a number", "true or false", "words"}[k]
}

func (k Kind) typ() types.Type {
	return [...]types.Type{types.Float64, types.Bool, types.String}[k]
}

// Names are what formulas may ask about. The zero Names are none; methods
// return new Names and never change the old ones.
type Names struct {
	declared types.Map
	fields   []string // of structs, for suggestions
	words    map[string][]string
	compiler *compilers
}

// names declares types under their names.
func names(declared types.Map, fields []string, words map[string][]string) Names {
	return Names{declared, fields, words, &compilers{declared: declared, words: words}}
}

func (n Names) compile(text string) (*vm.Program, refusal, error) {
	if n.compiler == nil {
		n = names(nil, nil, nil)
	}
	return n.compiler.compile(text)
}

// NamesOf declares the fields of a struct that have an expr tag, and those of
// the structs in it as group.field. Numbers of every kind are float64 in
// formulas; bool, string and functions stay what they are. A string field with a
// words tag can be one of these words only, or empty, and a formula that asks
// whether it is another is refused. It panics on fields of other types, which is
// a slip of the programmer.
func NamesOf(facts any) Names {
	n := Names{words: map[string][]string{}}
	n.declared = n.group("", reflect.TypeOf(facts))
	slices.Sort(n.fields)
	return names(n.declared, slices.Compact(n.fields), n.words)
}

func (n *Names) group(path string, t reflect.Type) types.Map {
	m := types.Map{}
	for i := range t.NumField() {
		f := t.Field(i)
		name, ok := f.Tag.Lookup("expr")
		if !ok || !f.IsExported() {
			continue
		}
		n.fields = append(n.fields, name)
		switch f.Type.Kind() {
		case reflect.Struct:
			m[name] = n.group(path+name+".", f.Type)
		case reflect.Float64, reflect.Int:
			m[name] = types.Float64
		case reflect.Bool:
			m[name] = types.Bool
		case reflect.String:
			m[name] = types.String
			if words, ok := f.Tag.Lookup("words"); ok {
				n.words[path+name] = strings.Fields(words)
			}
		case reflect.Func:
			m[name] = types.TypeOf(reflect.Zero(f.Type).Interface())
		default:
			panic(fmt.Sprintf("formula: the fact %s has type %s", name, f.Type))
		}
	}
	return m
}

// With adds names of a kind. An earlier name of the same spelling is hidden;
// ask [Names.Refuses] first where the names come from a file.
func (n Names) With(kind Kind, added ...string) Names {
	declared := maps.Clone(n.declared)
	if declared == nil {
		declared = types.Map{}
	}
	for _, name := range added {
		declared[name] = kind.typ()
	}
	return names(declared, n.fields, n.words)
}

// Refuses says why a name cannot be added: it is no identifier, or it is taken
// by a fact, a function or a word of the language. "" means that it can.
func (n Names) Refuses(name string) string {
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_"
	if name == "" || strings.Trim(name, letters+"0123456789") != "" || !strings.ContainsAny(name[:1], letters) {
		return "a name is made of letters, figures and underscores, and does not start with a figure"
	}
	if _, taken := n.declared[name]; taken {
		return "the name is taken"
	}
	if slices.Contains(functions(), name) || slices.Contains(builtins(), name) || slices.Contains(reserved(), name) {
		return "the name has a meaning in formulas"
	}
	return ""
}

// reserved are words with a meaning in the formula language itself.
func reserved() []string {
	return []string{"pi", "true", "false", "nil", "and", "or", "not", "in", "if", "else", "let",
		"matches", "contains", "startsWith", "endsWith"}
}

// top are all names that may stand alone, sorted.
func (n Names) top() []string {
	names := slices.Collect(maps.Keys(n.declared))
	names = append(names, functions()...)
	names = append(names, builtins()...)
	slices.Sort(names)
	return names
}

// Values are the values of names, groups as maps within.
type Values map[string]any

// ValuesOf are the values of a struct's fields under the names of [NamesOf].
func ValuesOf(facts any) Values { return valuesOf(reflect.ValueOf(facts)) }

func valuesOf(v reflect.Value) map[string]any {
	m := make(map[string]any, v.NumField())
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, ok := f.Tag.Lookup("expr")
		if !ok || !f.IsExported() {
			continue
		}
		switch f.Type.Kind() {
		case reflect.Struct:
			m[name] = valuesOf(v.Field(i))
		case reflect.Int:
			m[name] = float64(v.Field(i).Int())
		case reflect.Float64:
			m[name] = v.Field(i).Float()
		case reflect.Bool:
			m[name] = v.Field(i).Bool()
		case reflect.String:
			m[name] = v.Field(i).String()
		default:
			m[name] = v.Field(i).Interface()
		}
	}
	return m
}
