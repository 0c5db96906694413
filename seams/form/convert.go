package form

import (
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// converter turns the parser's tree into ours, refusing what our forms do not
// have. It gathers faults and goes on, so that all of them are told at once.
type converter struct {
	src    *source
	faults Faults
	depth  int
}

func (c *converter) fault(line, column int, message, mend string) *Node {
	n := &Node{src: c.src, line: line, column: column}
	c.faults = append(c.faults, n.Fault(message, "", mend))
	return n
}

// at is where a node's token stands; the start of the file for none.
func at(tk *token.Token) (line, column int) {
	if tk == nil || tk.Position == nil {
		return 1, 1
	}
	return max(1, tk.Position.Line), max(1, tk.Position.Column)
}

func (c *converter) document(tree *ast.File) *Node {
	var root *Node
	for _, doc := range tree.Docs {
		if doc.Body == nil {
			continue
		}
		if root != nil {
			line, column := start(doc.Body)
			c.fault(line, column, "a second document starts here", "keep one document in a file")
			break
		}
		root = c.node(doc.Body)
	}
	if root == nil {
		return c.fault(1, 1, "the file holds nothing", "write at least one entry")
	}
	return root
}

// start is where a node's text begins: a mapping's own token is its first colon.
func start(n ast.Node) (line, column int) {
	switch n := n.(type) {
	case *ast.MappingNode:
		if !n.IsFlowStyle && len(n.Values) > 0 {
			return start(n.Values[0])
		}
	case *ast.MappingValueNode:
		return at(n.Key.GetToken())
	}
	return at(n.GetToken())
}

func (c *converter) node(n ast.Node) *Node {
	line, column := start(n)
	c.depth++
	defer func() { c.depth-- }()
	if c.depth > maxDepth {
		return c.fault(line, column, "the file is nested too deeply", "take this apart")
	}
	out := &Node{src: c.src, line: line, column: column}
	switch n := n.(type) {
	case *ast.NullNode:
		return out
	case *ast.StringNode:
		out.kind, out.text = scalar, n.Value
		out.plain = n.Token == nil || n.Token.Type == token.StringType
		return out
	case *ast.BoolNode, *ast.IntegerNode, *ast.FloatNode, *ast.InfinityNode, *ast.NanNode:
		out.kind, out.plain, out.text = scalar, true, strings.TrimSpace(n.GetToken().Value)
		return out
	case *ast.LiteralNode:
		out.kind = scalar
		if n.Value != nil {
			out.text = n.Value.Value
		}
		return out
	case *ast.MappingNode:
		out.kind, out.flow = mapping, n.IsFlowStyle
		seen := make(map[string]int, len(n.Values))
		for _, v := range n.Values {
			c.entry(out, v, seen)
		}
		return out
	case *ast.MappingValueNode:
		out.kind = mapping
		c.entry(out, n, map[string]int{})
		return out
	case *ast.SequenceNode:
		out.kind, out.flow = sequence, n.IsFlowStyle
		for _, v := range n.Values {
			out.values = append(out.values, c.node(v))
		}
		return out
	case *ast.TagNode:
		return c.fault(line, column, "an exclamation mark at the start of a value is a YAML tag, which has no meaning here",
			"put the whole value in quotes")
	case *ast.AnchorNode:
		return c.fault(line, column, "an ampersand at the start of a value is a YAML anchor, which has no meaning here",
			"put the whole value in quotes, or write it out where it is needed")
	case *ast.AliasNode:
		return c.fault(line, column, "an asterisk at the start of a value is a YAML alias, which has no meaning here",
			"put the whole value in quotes, or write it out")
	case *ast.DirectiveNode:
		return c.fault(line, column, "a line that starts with % is a YAML directive, which has no meaning here", "delete the line")
	}
	return c.fault(line, column, "this kind of YAML is not used here", "write plain keys, values and lists")
}

// entry adds a key and its value to a mapping; seen has the lines of its keys.
func (c *converter) entry(m *Node, n *ast.MappingValueNode, seen map[string]int) {
	line, column := at(n.Key.GetToken())
	switch n.Key.(type) {
	case *ast.StringNode, *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode:
	case *ast.MergeKeyNode:
		c.fault(line, column, "<< merges another mapping in, which has no meaning here", "write the keys out")
		return
	default:
		c.fault(line, column, "a key is missing or is not a plain word", "write key: value")
		return
	}
	k, ok := n.Key.(ast.Node)
	if !ok {
		return
	}
	key := c.node(k)
	key.line, key.column = line, column
	if first, twice := seen[key.text]; twice {
		f := key.Fault("the key "+strconv.Quote(key.text)+" stands here twice", "",
			"keep one of the two; the first is on line "+strconv.Itoa(first))
		c.faults = append(c.faults, f)
		return
	}
	seen[key.text] = line
	value := c.node(n.Value)
	if value.kind == nothing {
		// The parser's place for a missing value is unreliable; the key's is not.
		value.line, value.column = key.line, key.column
	}
	m.keys, m.values = append(m.keys, key), append(m.values, value)
}
