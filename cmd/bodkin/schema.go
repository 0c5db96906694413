package main

import (
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/form/schema"
	"bodkin/templates"
)

// schemaForms are the forms that have a schema.
func schemaForms() []string {
	return []string{"class", "class-plan", "comparison", "garment", "job", "plan", "share", "shelf", "sitting", "workroom"}
}

func schemaOf(name string) (*schema.Schema, error) {
	switch name {
	case "class":
		return process.ClassFileSchema(), nil
	case "class-plan":
		return process.ClassPlanSchema(), nil
	case "comparison":
		return process.ComparisonSchema(), nil
	case "garment":
		return templates.Schema(), nil
	case "job":
		return process.JobSchema(), nil
	case "plan":
		return process.PlanSchema(), nil
	case "share":
		return process.SharedSchema(), nil
	case "shelf":
		return seams.ShelfSchema(), nil
	case "sitting":
		return process.SittingFormSchema(), nil
	case "workroom":
		return process.WorkroomSchema(), nil
	}
	return nil, unknown(name, schemaForms(), "write one of "+strings.Join(schemaForms(), ", "), "no schema for %q", name)
}

func schemaCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "schema FORM",
		Short: "Print the JSON Schema of a plan or of a file that is read",
		Long: `Print the JSON Schema (draft 2020-12) of a form: garment, job, workroom, class or
shelf, which are written in YAML, or plan, class-plan, comparison, share or
sitting, which are JSON. Editors and other programs check and complete files by it. What only
bodkin can know (that a cloth is on the shelf, that a formula holds) is not in
it; bodkin check tells that.`,
		Example: `  bodkin schema plan > plan.schema.json
  bodkin schema job > job.schema.json`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "FORM"),
		RunE: func(_ *cobra.Command, args []string) error {
			form, err := schemaOf(args[0])
			if err != nil {
				return err
			}
			return printJSON(s, form)
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return schemaForms(), cobra.ShellCompDirectiveNoFileComp
		},
	}
}
