// Package formula evaluates the conditions and formulas that stand in YAML
// files: in go a [form.Text] and the names it may use, out comes a number, a
// truth or a word for given values, or a [form.Fault] at the exact place.
//
// The one idea: every number is a plain float64 (millimetres, grams, degrees),
// so a formula is arithmetic and nothing else: no clock, no lists, no loops. A
// division by zero, a number that is none and an infinite one are errors.
//
// Start at [New]; the names come from [NamesOf] and [Names.With], the values
// from [ValuesOf]. A formula is compiled when first used, once, and may be
// used by several goroutines. Functions: min, max, abs, ceil, floor, round,
// sqrt, hypot, and sin, cos, tan, atan2 in degrees; pi is a number.
package formula
