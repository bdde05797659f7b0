package study

// unit is the unit of an entry, as it is typed.
func (c *Form) unit(e Entry) string {
	f, _ := field(e.Path)
	return shown(c.Units, f)
}
