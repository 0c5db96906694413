// Package form reads our YAML files strictly: in go a file's name and bytes
// and a pointer to a Go value with yaml tags, out comes the filled value or
// every fault of the file with line, column and the way to mend it.
//
// The one idea: nothing is read by guess. Unknown and duplicate keys, tags,
// anchors, odd numbers, empty values and second documents are refused, and on
// any fault the value stays as it was.
//
// Start at [Decode]. Files that are lists of entries of several kinds go
// through [Parse] and [Node]. [Text] and [Pairs] keep the places of what they
// hold for those who find faults later (formulas, names that must exist).
//
// Field tags: `yaml:"key"`, `yaml:"key,required"`, `yaml:",place"` on a [Place]
// (filled with the place of the mapping), `yaml:",node"` on a *[Node] (the
// mapping itself), `oneof:"a b c"` for closed lists, `units:"g/m2=1
// oz/yd2=33.906"` for a number that may carry its unit.
package form
