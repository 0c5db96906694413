package form

import (
	"encoding"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Decode reads a YAML file into the value that into points to. Keys that the
// file leaves out keep the value they had. The error is [Faults], every fault
// of the file in order; the value is then left as it was.
//
// It panics where into is not a pointer or a field has a type that our forms
// do not have (a map, for instance: its order would be lost; use [Pairs]).
func Decode(file string, data []byte, into any) error {
	root, err := Parse(file, data)
	if err != nil {
		return err
	}
	return root.Decode(into)
}

// FormReader is a value that reads itself from a node, for what may be written
// in more than one way. Faults in the error keep their places.
type FormReader interface{ ReadForm(*Node) error }

// Decode reads the node into the value that into points to, as the function
// [Decode] does for a whole file.
func (n *Node) Decode(into any) error {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		panic("form: Decode needs a pointer")
	}
	fresh := reflect.New(target.Type().Elem()).Elem()
	fresh.Set(target.Elem())
	var d decoder
	d.value(n, fresh, "")
	if err := d.faults.Err(); err != nil {
		return err
	}
	target.Elem().Set(fresh)
	return nil
}

type decoder struct{ faults Faults }

func (d *decoder) fault(n *Node, message, nearest, mend string) {
	d.faults = append(d.faults, n.Fault(message, nearest, mend))
}

// pairsReader is implemented by every Pairs.
type pairsReader interface{ readPairs(*decoder, *Node) }

var (
	placeType = reflect.TypeFor[Place]()
	nodeType  = reflect.TypeFor[*Node]()
)

// value reads n into v. oneOf is the closed list of words, "" for any.
func (d *decoder) value(n *Node, v reflect.Value, oneOf string) {
	if v.Type() == nodeType {
		v.Set(reflect.ValueOf(n))
		return
	}
	if n.kind == nothing {
		d.fault(n, "a value is missing here", "", "write a value, or leave the key out")
		return
	}
	switch into := v.Addr().Interface().(type) {
	case *Text:
		if d.scalar(n, "text or a number") {
			*into = n.asText()
			d.listed(n, oneOf)
		}
		return
	case pairsReader:
		into.readPairs(d, n)
		return
	case FormReader:
		d.keep(n, into.ReadForm(n))
		return
	case encoding.TextUnmarshaler:
		if d.scalar(n, "text or a number") {
			d.keep(n, into.UnmarshalText([]byte(n.text)))
		}
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		p := reflect.New(v.Type().Elem())
		if !v.IsNil() {
			p.Elem().Set(v.Elem())
		}
		d.value(n, p.Elem(), oneOf)
		v.Set(p)
	case reflect.Struct:
		d.structure(n, v)
	case reflect.Slice:
		d.slice(n, v, oneOf)
	case reflect.String:
		d.str(n, v, oneOf)
	case reflect.Bool:
		d.boolean(n, v)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		d.integer(n, v)
	case reflect.Float64:
		if d.scalar(n, "a number") {
			f, ok := d.number(n)
			if ok {
				v.SetFloat(f)
			}
		}
	default:
		panic("form: no form for the type " + v.Type().String())
	}
}

// keep turns an error of a value that read itself into faults.
func (d *decoder) keep(n *Node, err error) {
	if err == nil {
		return
	}
	if fs, ok := errors.AsType[Faults](err); ok {
		d.faults = append(d.faults, fs...)
		return
	}
	if f, ok := errors.AsType[Fault](err); ok {
		d.faults = append(d.faults, f)
		return
	}
	if hinted, ok := errors.AsType[hinter](err); ok {
		nearest, mend := hinted.Hint()
		d.fault(n, strconv.Quote(n.text)+" "+hinted.Trouble(), nearest, mend)
		return
	}
	d.fault(n, err.Error(), "", "")
}

// hinter is an error that knows what is wrong apart from how to mend it.
type hinter interface {
	error
	Trouble() string
	Hint() (nearest, mend string)
}

func (d *decoder) structure(n *Node, v reflect.Value) {
	fields := n.src.shape(v.Type())
	if n.kind != mapping {
		d.fault(n, "keys with values are wanted here, not "+n.said(), "", "the keys are "+strings.Join(known(fields), ", "))
		return
	}
	var meant []string // keys that misspelt ones probably stand for
	for i, key := range n.keys {
		f, ok := named(fields, key.text)
		if !ok {
			names := known(fields)
			nearest, mend := Nearest(key.text, names), ""
			if nearest == "" {
				mend = "the keys here are " + strings.Join(names, ", ")
			}
			d.fault(key, "unknown key "+strconv.Quote(key.text), nearest, mend)
			meant = append(meant, nearest)
			continue
		}
		if f.units != "" {
			d.measured(n.values[i], v.FieldByIndex(f.index), f.units)
			continue
		}
		d.value(n.values[i], v.FieldByIndex(f.index), f.oneOf)
	}
	for _, f := range fields {
		switch {
		case f.place:
			v.FieldByIndex(f.index).Set(reflect.ValueOf(n.Place()))
		case f.node:
			v.FieldByIndex(f.index).Set(reflect.ValueOf(n))
		case f.required && n.child(f.name) == nil && slices.Contains(meant, f.name):
		case f.required && n.child(f.name) == nil:
			d.fault(n, "the key "+strconv.Quote(f.name)+" is missing", "", "add "+f.name+": and its value")
		case f.required && n.child(f.name).kind == scalar && strings.TrimSpace(n.child(f.name).text) == "":
			d.fault(n.child(f.name), "the value of "+strconv.Quote(f.name)+" is empty", "", "write it")
		}
	}
}

func (d *decoder) slice(n *Node, v reflect.Value, oneOf string) {
	if n.kind != sequence {
		mend := "start each entry on a line of its own with -"
		if n.kind == scalar {
			mend = "write [" + n.text + "]"
		}
		d.fault(n, "a list is wanted here, not "+n.said(), "", mend)
		return
	}
	list := reflect.MakeSlice(v.Type(), len(n.values), len(n.values))
	for i, item := range n.values {
		d.value(item, list.Index(i), oneOf)
	}
	v.Set(list)
}

func (ps *Pairs[T]) readPairs(d *decoder, n *Node) {
	if n.kind != mapping {
		d.fault(n, "keys with values are wanted here, not "+n.said(), "", "write key: value")
		return
	}
	list := make(Pairs[T], len(n.keys))
	for i, key := range n.keys {
		list[i].Key = key.asText()
		d.value(n.values[i], reflect.ValueOf(&list[i].Value).Elem(), "")
	}
	*ps = list
}

// said names what stands there, for "wanted here, not …".
func (n *Node) said() string {
	if n.kind == scalar {
		return fmt.Sprintf("%q", n.text)
	}
	return n.kind.String()
}

// field is a field of a struct under its key.
type field struct {
	name            string
	oneOf           string
	units           string // of a number, each with what one of it counts for
	required, place bool
	node            bool // not a key: the mapping that the struct was read from
	index           []int
}

func named(fs []field, name string) (field, bool) {
	i := slices.IndexFunc(fs, func(f field) bool { return !f.place && !f.node && f.name == name })
	if i < 0 {
		return field{}, false
	}
	return fs[i], true
}

func known(fs []field) []string {
	var names []string
	for _, f := range fs {
		if !f.place && !f.node {
			names = append(names, f.name)
		}
	}
	return names
}

// shape lists the fields of a struct that have a yaml tag, in the order of the
// struct; the fields of embedded structs count as its own.
func (s *source) shape(t reflect.Type) []field {
	if fs, ok := s.shapes[t]; ok {
		return fs
	}
	var fs []field
	for i := range t.NumField() {
		sf := t.Field(i)
		tag, tagged := sf.Tag.Lookup("yaml")
		if sf.Anonymous && !tagged && sf.Type.Kind() == reflect.Struct {
			for _, inner := range s.shape(sf.Type) {
				inner.index = append([]int{i}, inner.index...)
				fs = append(fs, inner)
			}
			continue
		}
		if !tagged || tag == "-" || !sf.IsExported() {
			continue
		}
		name, options, _ := strings.Cut(tag, ",")
		f := field{name: name, index: []int{i}, oneOf: sf.Tag.Get("oneof"), units: sf.Tag.Get("units")}
		for o := range strings.SplitSeq(options, ",") {
			switch o {
			case "required":
				f.required = true
			case "place":
				f.place = true
			case "node":
				f.node = true
			}
		}
		if f.place && sf.Type != placeType {
			panic("form: only a Place can take the option place: " + sf.Name)
		}
		if f.node && sf.Type != nodeType {
			panic("form: only a *Node can take the option node: " + sf.Name)
		}
		fs = append(fs, f)
	}
	s.shapes[t] = fs
	return fs
}
