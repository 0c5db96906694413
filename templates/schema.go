package templates

import (
	"reflect"

	"bodkin/seams/form/schema"
)

// Schema is the JSON Schema of a garment file. Formulas and the names that
// points, edges and joins use of each other are for [Parse] to check.
func Schema() *schema.Schema {
	return schema.Form(reflect.TypeFor[Garment](), "Garment: a parametric description of pieces, joins and edges")
}
