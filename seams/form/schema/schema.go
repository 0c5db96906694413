// Package schema derives JSON Schemas (draft 2020-12) from the Go types that
// our files are read into and that our JSON is written from. In goes a type;
// out comes a schema that says which keys there are, which must be there and
// what may stand under them. The one idea is that nothing is written down
// twice: the tags that package form and encoding/json go by are the schema.
// What only code checks (a name that must be on the shelf, a formula) is not in
// it. Start at [Form], [Lists] and [JSON].
package schema

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"

	"bodkin/seams/form"
)

// Draft is the address of the dialect of JSON Schema that is written.
const Draft = "https://json-schema.org/draft/2020-12/schema"

// Schema is a schema, or a part of one. Its keys are those of the standard.
type Schema struct {
	Draft       string      `json:"$schema,omitempty"`
	Title       string      `json:"title,omitempty"`
	Description string      `json:"description,omitempty"`
	Ref         string      `json:"$ref,omitempty"`
	Type        any         `json:"type,omitempty"` // a word or several
	Const       string      `json:"const,omitempty"`
	Enum        []string    `json:"enum,omitempty"`
	Pattern     string      `json:"pattern,omitempty"`
	Properties  *Properties `json:"properties,omitempty"`
	Required    []string    `json:"required,omitempty"`
	Additional  any         `json:"additionalProperties,omitempty"` // false, or the schema of every value
	Items       *Schema     `json:"items,omitempty"`
	AnyOf       []*Schema   `json:"anyOf,omitempty"`
	Least       int         `json:"minItems,omitempty"`
	Most        int         `json:"maxItems,omitempty"`
	Defs        *Properties `json:"$defs,omitempty"`
}

// Properties are schemas by name, in the order of the Go type.
type Properties []Property

// Property is a schema under its name.
type Property struct {
	Name   string
	Schema *Schema
}

// MarshalJSON writes an object whose keys keep their order.
func (ps Properties) MarshalJSON() ([]byte, error) {
	var out bytes.Buffer
	out.WriteByte('{')
	for i, p := range ps {
		if i > 0 {
			out.WriteByte(',')
		}
		for j, part := range []any{p.Name, p.Schema} {
			if j > 0 {
				out.WriteByte(':')
			}
			b, err := json.Marshal(part)
			if err != nil {
				return nil, err
			}
			out.Write(b)
		}
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}

// Form is the schema of files that package form reads into a type: YAML, or
// JSON with the same content. It panics where form could not read such a type.
func Form(t reflect.Type, title string) *Schema { return whole(t, title, "yaml") }

// JSON is the schema of what encoding/json writes of a type. Keys that are
// always written are required. It panics where a type has no JSON.
func JSON(t reflect.Type, title string) *Schema { return whole(t, title, "json") }

// Lists is the schema of files that are a list whose items package form reads
// into one or another of the types.
func Lists(title string, of ...reflect.Type) *Schema {
	d := deriver{tag: "yaml", named: map[string]reflect.Type{}}
	s := &Schema{Type: "array", Items: &Schema{}}
	for _, t := range of {
		s.Items.AnyOf = append(s.Items.AnyOf, d.reference(t))
	}
	return d.finished(s, title)
}

func whole(t reflect.Type, title, tag string) *Schema {
	d := deriver{tag: tag, named: map[string]reflect.Type{}}
	return d.finished(d.structure(t), title)
}

// finished is the schema with its head and all that it refers to.
func (d *deriver) finished(s *Schema, title string) *Schema {
	s.Draft, s.Title = Draft, title
	if len(d.defs) > 0 {
		slices.SortFunc(d.defs, func(a, b Property) int { return strings.Compare(a.Name, b.Name) })
		s.Defs = &d.defs
	}
	return s
}

// Among says of a property of the whole that it is one of some words, where
// code and not a tag keeps the list. It panics where there is no such property.
func (s *Schema) Among(property string, words []string) *Schema {
	p := s.property(property)
	*p = Schema{Type: "string", Enum: words}
	return s
}

// Always says of a property of the whole that it is this word. It panics where
// there is no such property.
func (s *Schema) Always(property, word string) *Schema {
	s.property(property).Const = word
	return s
}

// Part is the schema of a type within the whole, by the type's name with a small
// first letter. It panics where the whole has no such type.
func (s *Schema) Part(name string) *Schema {
	for _, p := range *s.Defs {
		if p.Name == name {
			return p.Schema
		}
	}
	panic("schema: no type " + name)
}

func (s *Schema) property(name string) *Schema {
	for _, p := range *s.Properties {
		if p.Name == name {
			return p.Schema
		}
	}
	panic("schema: no property " + name)
}

type deriver struct {
	tag   string // yaml or json
	defs  Properties
	named map[string]reflect.Type // which type each name of defs stands for
}

var (
	text        = reflect.TypeFor[form.Text]()
	node        = reflect.TypeFor[*form.Node]()
	place       = reflect.TypeFor[form.Place]()
	unmarshaler = reflect.TypeFor[encoding.TextUnmarshaler]()
)

// value is the schema of what stands for a value of the type.
func (d *deriver) value(t reflect.Type, words string) *Schema {
	if words != "" {
		return &Schema{Type: "string", Enum: strings.Fields(words)}
	}
	if d.tag == "yaml" {
		if t == text || reflect.PointerTo(t).Implements(unmarshaler) {
			return &Schema{Type: []string{"string", "number"}} // 92 cm, 40, a word
		}
		if of, ok := pairs(t); ok {
			return &Schema{Type: "object", Additional: d.value(of, "")}
		}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return d.value(t.Elem(), "")
	case reflect.Struct:
		return d.reference(t)
	case reflect.Slice:
		return &Schema{Type: "array", Items: d.value(t.Elem(), "")}
	case reflect.Array:
		return &Schema{Type: "array", Items: d.value(t.Elem(), ""), Least: t.Len(), Most: t.Len()}
	case reflect.Map:
		return &Schema{Type: "object", Additional: d.value(t.Elem(), "")}
	case reflect.String:
		return &Schema{Type: "string"}
	case reflect.Bool:
		return &Schema{Type: "boolean"}
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return &Schema{Type: "integer"}
	case reflect.Float64:
		return &Schema{Type: "number"}
	}
	panic(fmt.Sprintf("schema: no schema for the type %v", t))
}

// pairs reports whether a type is a form.Pairs, and of what.
func pairs(t reflect.Type) (of reflect.Type, ok bool) {
	if t.Kind() != reflect.Slice || t.PkgPath() != text.PkgPath() || !strings.HasPrefix(t.Name(), "Pairs[") {
		return nil, false
	}
	value, _ := t.Elem().FieldByName("Value")
	return value.Type, true
}

// reference puts a struct among the definitions, once, and refers to it.
func (d *deriver) reference(t reflect.Type) *Schema {
	name := strings.ToLower(t.Name()[:1]) + t.Name()[1:]
	switch known, ok := d.named[name]; {
	case !ok:
		d.named[name] = t
		s := d.structure(t)
		d.defs = append(d.defs, Property{name, s})
	case known != t:
		panic(fmt.Sprintf("schema: %v and %v have one name", known, t))
	}
	return &Schema{Ref: "#/$defs/" + name}
}

func (d *deriver) structure(t reflect.Type) *Schema {
	s := &Schema{Type: "object", Properties: &Properties{}, Additional: false}
	d.fields(t, s)
	return s
}

// fields adds the keys of a struct; those of embedded structs count as its own.
func (d *deriver) fields(t reflect.Type, s *Schema) {
	for f := range t.Fields() {
		tag, tagged := f.Tag.Lookup(d.tag)
		if f.Anonymous && !tagged && f.Type.Kind() == reflect.Struct {
			d.fields(f.Type, s)
			continue
		}
		if !f.IsExported() || tag == "-" || !tagged && d.tag == "yaml" || f.Type == node || f.Type == place {
			continue
		}
		name, options, _ := strings.Cut(tag, ",")
		if name == "" {
			name = f.Name
		}
		given := strings.Split(options, ",")
		if d.tag == "yaml" && slices.Contains(given, "required") || d.tag == "json" && !slices.Contains(given, "omitempty") && !slices.Contains(given, "omitzero") {
			s.Required = append(s.Required, name)
		}
		p := d.property(f)
		if d.tag == "json" && p.Ref == "" {
			p.Description = measuredIn(name)
		}
		*s.Properties = append(*s.Properties, Property{name, p})
	}
}

func (d *deriver) property(f reflect.StructField) *Schema {
	if units := f.Tag.Get("units"); d.tag == "yaml" && units != "" {
		return &Schema{Type: []string{"number", "string"}, Pattern: withUnit(units)}
	}
	words := ""
	if d.tag == "yaml" {
		words = f.Tag.Get("oneof")
	}
	return d.value(f.Type, words)
}

// withUnit is a pattern for a number with one of the units of a field's tag.
func withUnit(units string) string {
	var names []string
	for u := range strings.FieldsSeq(units) {
		name, _, _ := strings.Cut(u, "=")
		names = append(names, regexp.QuoteMeta(name))
	}
	return `^[+-]?[0-9]+(\.[0-9]+)? *(` + strings.Join(names, "|") + `)$`
}

// measuredIn tells the unit that the name of a key ends in.
func measuredIn(name string) string {
	for _, u := range [][2]string{{"mm2", "square millimetres"}, {"mm", "millimetres"}, {"m", "metres"}, {"metres", "metres"}, {"minutes", "minutes"}} {
		if name == u[0] || strings.HasSuffix(name, "_"+u[0]) {
			return u[1]
		}
	}
	return ""
}
