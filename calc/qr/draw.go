package qr

// format is error correction M with mask 0: five zero bits and ten check bits of zero, under the standard's own mask.
const format = 0x5412

// blank has every module that carries no data.
func blank(version int) *Code {
	size := 17 + 4*version
	c := &Code{size: size, dark: make([]bool, size*size), fixed: make([]bool, size*size)}
	for i := range size { // timing
		c.set(6, i, i%2 == 0)
		c.set(i, 6, i%2 == 0)
	}
	for _, at := range [][2]int{{3, 3}, {size - 4, 3}, {3, size - 4}} {
		c.rings(at[0], at[1], 4)
	}
	if version > 1 { // one alignment pattern in these sizes
		c.rings(size-7, size-7, 2)
	}
	c.setFormat()
	return c
}

func (c *Code) set(x, y int, dark bool) {
	if x < 0 || y < 0 || x >= c.size || y >= c.size {
		return
	}
	c.dark[y*c.size+x], c.fixed[y*c.size+x] = dark, true
}

// rings is a finder with its white border (reach 4) or an alignment pattern (reach 2).
func (c *Code) rings(cx, cy, reach int) {
	for y := -reach; y <= reach; y++ {
		for x := -reach; x <= reach; x++ {
			ring := max(x, -x, y, -y)
			white := ring == 4 || ring == 2
			if reach == 2 {
				white = ring == 1
			}
			c.set(cx+x, cy+y, !white)
		}
	}
}

func (c *Code) setFormat() {
	bit := func(i int) bool { return format>>i&1 == 1 }
	for i := range 15 {
		switch { // along the upper left finder
		case i < 6:
			c.set(8, i, bit(i))
		case i < 8:
			c.set(8, i+1, bit(i))
		case i == 8:
			c.set(7, 8, bit(i))
		default:
			c.set(14-i, 8, bit(i))
		}
		if i < 8 { // along the two others
			c.set(c.size-1-i, 8, bit(i))
		} else {
			c.set(8, c.size-15+i, bit(i))
		}
	}
	c.set(8, c.size-8, true)
}

// fill lays the bits in columns two modules wide, up and down in turn from the right, and masks them.
func (c *Code) fill(codewords []byte) {
	n, up := 0, true
	for right := c.size - 1; right > 0; right -= 2 {
		if right == 6 { // the timing column is left out
			right--
		}
		for i := range c.size {
			y := i
			if up {
				y = c.size - 1 - i
			}
			for x := right; x > right-2; x-- {
				if c.fixed[y*c.size+x] {
					continue
				}
				dark := n < 8*len(codewords) && codewords[n/8]>>(7-n%8)&1 == 1
				c.dark[y*c.size+x] = dark != ((x+y)%2 == 0)
				n++
			}
		}
		up = !up
	}
}
