package field

// Label is the accessible name of a word: what it is, and its unit.
func (c *Word) Label() string {
	if u := c.Store.Units.Unit(c.F.Q); u != "" {
		return c.F.Name + " in " + u
	}
	return c.F.Name
}

// Unit is the unit that follows the word.
func (c *Word) Unit() string {
	u := c.Store.Units.Unit(c.F.Q)
	switch {
	case c.Bare || u == "":
		return ""
	case u == "°":
		return u
	}
	return "\u202f" + u
}

// Type takes what is typed.
func (c *Word) Type(raw string) {
	if c.OnType != nil {
		c.OnType(raw)
		return
	}
	c.Store.Type(c.F, raw)
}

// Place is what an empty input shows.
func (c *Row) Place() string {
	if a := Assumed(c.Store, c.F); a != "" {
		return a
	}
	if c.F.Must {
		return ""
	}
	return "not given"
}

// Leave ends the typing.
func (c *Text) Leave(text string) {
	c.Store.Leave(c.W.ID)
	if c.Named != nil {
		c.Named(text)
	}
}
