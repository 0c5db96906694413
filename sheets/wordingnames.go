package sheets

import (
	"reflect"
	"strconv"
)

// worded is one sentence of the wording, under the name by which a file may say
// it another way.
type worded struct {
	name string
	text *string
}

// sentences are all that the wording says, by name, in the order of its fields: a
// sentence that is added has its name at once.
func (w *wording) sentences() []worded {
	var out []worded
	name := func(above, key string) string {
		if above == "" {
			return key
		}
		return above + "." + key
	}
	var walk func(v reflect.Value, at string)
	walk = func(v reflect.Value, at string) {
		switch v.Kind() {
		case reflect.String:
			// The fields are not exported, so reflection reads but does not set them;
			// the address leads to the same string.
			out = append(out, worded{at, (*string)(v.Addr().UnsafePointer())})
		case reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i), name(at, strconv.Itoa(i)))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i), name(at, v.Type().Field(i).Name))
			}
		}
	}
	walk(reflect.ValueOf(w).Elem(), "")
	return out
}
