package journey

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/chromedp"
)

// Node is one thing of the accessibility tree: what a screen reader would name.
type Node struct {
	Role, Name string
	Properties map[string]string
	backend    cdp.BackendNodeID
	id, parent accessibility.NodeID
}

// Tree reads what the page offers to those who cannot see it, in reading order.
func (p *Page) Tree() []Node {
	p.t.Helper()
	tree, err := chromedp.Call(p.ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	if err != nil {
		return nil // between two pages there is nothing to name
	}
	parents := map[accessibility.NodeID]accessibility.NodeID{}
	for _, node := range tree.Nodes {
		parents[node.NodeID] = node.ParentID
	}
	var found []Node
	for _, node := range tree.Nodes {
		if node.Ignored {
			continue
		}
		properties := map[string]string{}
		for _, property := range node.Properties {
			properties[string(property.Name)] = word(property.Value)
		}
		found = append(found, Node{
			Role: word(node.Role), Name: word(node.Name), Properties: properties,
			backend: node.BackendDOMNodeID, id: node.NodeID, parent: node.ParentID,
		})
	}
	for i := range found { // ignored ones in between do not hide who belongs to whom
		for id := found[i].parent; id != ""; id = parents[id] {
			if known(found, id) {
				found[i].parent = id
				break
			}
		}
	}
	return found
}

func known(nodes []Node, id accessibility.NodeID) bool {
	for _, node := range nodes {
		if node.id == id {
			return true
		}
	}
	return false
}

func word(value *accessibility.Value) string {
	if value == nil || len(value.Value) == 0 {
		return ""
	}
	var text string
	if json.Unmarshal(value.Value, &text) != nil {
		return string(value.Value)
	}
	return strings.TrimSpace(text)
}

// Find waits for the one thing with this role and name. Roles may be several, parted by "|".
func (p *Page) Find(roles, name string) Node {
	p.t.Helper()
	var found []Node
	p.Eventually(fmt.Sprintf("one %s named %q (there are %d)", roles, name, len(found)), func() bool {
		found = p.matching(roles, name)
		return len(found) == 1
	})
	return found[0]
}

func (p *Page) matching(roles, name string) []Node {
	p.t.Helper()
	var found []Node
	for _, node := range p.Tree() {
		if node.Name == name && contains(roles, node.Role) {
			found = append(found, node)
		}
	}
	return found
}

func contains(roles, role string) bool {
	for each := range strings.SplitSeq(roles, "|") {
		if each == role {
			return true
		}
	}
	return false
}

// within tells whether a node lies inside another.
func within(nodes []Node, inner, outer Node) bool {
	parents := map[accessibility.NodeID]accessibility.NodeID{}
	for _, node := range nodes {
		parents[node.id] = node.parent
	}
	for id := inner.parent; id != ""; id = parents[id] {
		if id == outer.id {
			return true
		}
	}
	return false
}
