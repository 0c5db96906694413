package seams

import (
	"reflect"

	"bodkin/seams/form/schema"
)

// ShelfSchema is the JSON Schema of a shelf file: a list of entries, each of one
// kind. Conditions, formulas and the names that entries use of each other are
// for [Load] to check.
func ShelfSchema() *schema.Schema {
	return schema.Lists("Shelf: cloths, stitches, machines, constructions and what else is known",
		reflect.TypeFor[Cloth](), reflect.TypeFor[Stitch](), reflect.TypeFor[Machine](), reflect.TypeFor[Construction](),
		reflect.TypeFor[NeedleRule](), reflect.TypeFor[HandNeedle](), reflect.TypeFor[Thread](), reflect.TypeFor[Interfacing](),
		reflect.TypeFor[Tool](), reflect.TypeFor[Pressing](), reflect.TypeFor[Act](), reflect.TypeFor[Caution](), reflect.TypeFor[Stay]())
}
