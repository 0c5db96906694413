// Package unison puts the work of several makers into one sequence of numbers,
// so that a number is the same act on the same part for everybody. In goes for
// each [Maker] what she does and the [order.Problem] of her own work; out comes
// a [Result]: numbers with the operation that each is for each maker, in a
// sequence that all can keep. The one idea: the ways in which a part is made are
// laid over each other as far as their acts agree, and what each maker must do
// before what holds for all.
//
// Start at [Join]. It knows nothing of what the acts are, and reads no clock.
package unison
