package formula

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/expr-lang/expr"
	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/checker"
	"github.com/expr-lang/expr/compiler"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/optimizer"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/types"
	"github.com/expr-lang/expr/vm"

	"bodkin/seams/form"
)

// compilers compile formulas over the same names, one at a time. Describing
// the names and functions to the language takes longer than compiling most
// formulas, so it is done once for all of them.
type compilers struct {
	declared types.Map
	words    map[string][]string // that a name can be, where it cannot be others

	mu     sync.Mutex // the configuration keeps what it learns of types
	config *conf.Config
}

func (c *compilers) compile(text string) (*vm.Program, refusal, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.config == nil {
		c.configure()
	}
	tree, err := parser.ParseWithConfig(text, c.config)
	if err != nil {
		return nil, refusal{}, err
	}
	_, err = checker.Check(tree, c.config) // as it was written
	r := reader{words: c.words}
	ast.Walk(&tree.Node, &r)
	if err != nil || r.refused.why != "" {
		return nil, r.refused, err
	}
	if _, err = checker.Check(tree, c.config); err != nil {
		return nil, refusal{}, err
	}
	if err = optimizer.Optimize(&tree.Node, c.config); err != nil {
		return nil, refusal{}, err
	}
	program, err := compiler.Compile(tree, c.config)
	return program, refusal{}, err
}

func (c *compilers) configure() {
	c.config = conf.CreateNew()
	declared := types.Map{"pi": types.Float64}
	maps.Copy(declared, c.declared)
	options := append(ours(), expr.Env(declared), expr.MaxNodes(1000))
	for _, o := range options {
		o(c.config)
	}
	for name := range c.config.Builtins {
		if !slices.Contains(builtins(), name) {
			delete(c.config.Builtins, name)
			c.config.Disabled[name] = true
		}
	}
}

// reader makes every whole number a float64, puts in pi, makes a division by
// zero an error, and refuses what is not arithmetic: lists of more than words,
// loops, variables.
type reader struct {
	words   map[string][]string
	refused refusal
}

// refusal is why a formula is not taken, and where; "" where it is.
type refusal struct {
	why           string
	from, to      int // characters
	nearest, mend string
}

func (r *reader) Visit(node *ast.Node) {
	refuse := func(why string) {
		if r.refused.why == "" {
			l := (*node).Location()
			r.refused = refusal{why: why, from: l.From, to: l.To, mend: "write plain arithmetic and comparisons"}
		}
	}
	switch n := (*node).(type) {
	case *ast.IntegerNode:
		ast.Patch(node, &ast.FloatNode{Value: float64(n.Value)})
	case *ast.IdentifierNode:
		switch {
		case n.Value == "pi":
			ast.Patch(node, &ast.FloatNode{Value: math.Pi})
		case strings.HasPrefix(n.Value, "$"):
			refuse("a $ has no meaning in a formula")
		}
	case *ast.BuiltinNode:
		if !slices.Contains(builtins(), n.Name) {
			refuse("the function " + n.Name + " is not used in formulas")
		}
	case *ast.BinaryNode:
		switch n.Operator {
		case "..":
			refuse("a range of numbers is not used in formulas")
		case "==", "!=", "in":
			r.compared(n.Left, n.Right)
			r.compared(n.Right, n.Left)
		case "/":
			ast.Patch(node, &ast.CallNode{Callee: &ast.IdentifierNode{Value: divide}, Arguments: []ast.Node{n.Left, n.Right}})
		}
	case *ast.SliceNode, *ast.PredicateNode, *ast.PointerNode, *ast.MapNode, *ast.VariableDeclaratorNode, *ast.SequenceNode:
		refuse("this is not arithmetic")
	}
}

// compared refuses a word that a name is compared with and can never be.
func (r *reader) compared(with, words ast.Node) {
	known, ok := r.words[pathOf(with)]
	if !ok || r.refused.why != "" {
		return
	}
	list := []ast.Node{words}
	if a, ok := words.(*ast.ArrayNode); ok {
		list = a.Nodes
	}
	for _, w := range list {
		s, ok := w.(*ast.StringNode)
		if !ok || s.Value == "" || slices.Contains(known, s.Value) {
			continue
		}
		l := w.Location()
		r.refused = refusal{why: pathOf(with) + " is never " + strconv.Quote(s.Value), from: l.From, to: l.To,
			nearest: form.Nearest(s.Value, known), mend: "it is one of " + strings.Join(known, ", ")}
		return
	}
}

// pathOf is a name with the groups it stands in, as in part.name; empty for what
// is no name.
func pathOf(node ast.Node) string {
	switch n := node.(type) {
	case *ast.IdentifierNode:
		return n.Value
	case *ast.MemberNode:
		group, field := pathOf(n.Node), ""
		if s, ok := n.Property.(*ast.StringNode); ok {
			field = s.Value
		}
		if group != "" && field != "" {
			return group + "." + field
		}
	}
	return ""
}
