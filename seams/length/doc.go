// Package length reads and writes lengths as a dressmaker does: in go texts
// such as "92 cm" or "1 5/8 in", out comes [MM], millimetres; and back again.
//
// The one idea: a length carries its unit wherever a person writes it, and is
// millimetres everywhere inside. An inch is exactly 25.4 mm; the trade's own
// roundings (1/8 in for 3 mm and so on) are never applied silently.
//
// Start at [Parse] and [Format]. [Long] writes cloth and thread in metres or
// yards. Numbers written as JSON should be float64: MM reads texts only.
package length
