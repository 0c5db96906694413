package process

import (
	"reflect"

	"bodkin/seams/form/schema"
)

// PlanSchema is the JSON Schema of a plan as it is written as JSON.
func PlanSchema() *schema.Schema {
	return schema.JSON(reflect.TypeFor[Plan](), "Plan of the making of a garment").
		Always("schema", Schema).Among("units", unitNames())
}

// JobSchema is the JSON Schema of a job file. Names of garments, cloths, seams
// and measures are for the planner to check.
func JobSchema() *schema.Schema {
	return schema.Form(reflect.TypeFor[Job](), "Job: what is to be made, in what size and cloth").
		Among("favour", favours()).Among("units", unitNames())
}

// ClassFileSchema is the JSON Schema of a class file.
func ClassFileSchema() *schema.Schema {
	return schema.Form(reflect.TypeFor[Class](), "Class: who sews what together, when and in which room").
		Among("favour", favours()).Among("units", unitNames())
}

// ClassPlanSchema is the JSON Schema of a class as it is written as JSON.
func ClassPlanSchema() *schema.Schema {
	return schema.JSON(reflect.TypeFor[ClassPlan](), "Plan of a class").Always("schema", ClassSchema)
}

// SharedSchema is the JSON Schema of shared work as it is written as JSON.
func SharedSchema() *schema.Schema {
	return schema.JSON(reflect.TypeFor[Share](), "Work shared among people").Always("schema", ShareSchema)
}

// ComparisonSchema is the JSON Schema of two plans side by side as they are
// written as JSON.
func ComparisonSchema() *schema.Schema {
	return schema.JSON(reflect.TypeFor[Comparison](), "Two plans side by side")
}

// SittingFormSchema is the JSON Schema of several garments in one sitting as they
// are written as JSON.
func SittingFormSchema() *schema.Schema {
	s := schema.JSON(reflect.TypeFor[Sitting](), "Several garments in one sitting").
		Always("schema", SittingSchema).Among("units", unitNames())
	s.Part("plan").Always("schema", Schema).Among("units", unitNames())
	return s
}

// WorkroomSchema is the JSON Schema of a workroom file.
func WorkroomSchema() *schema.Schema {
	return schema.Form(reflect.TypeFor[Workroom](), "Workroom: machines, people and the house's own figures").
		Among("favour", favours()).Among("units", unitNames()).Among("iron", ironKinds())
}
