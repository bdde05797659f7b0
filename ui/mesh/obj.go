package mesh

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"cohoist/core/vec"
)

// object reads an OBJ file: its corners (v) and faces (f). A face of more than three corners is cut into a fan
// from its first; everything else in the file is passed over.
func (b *builder) object(text string) error {
	var corners []vec.V3
	for n, line := range strings.Split(text, "\n") {
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		where := "Line " + strconv.Itoa(n+1)
		switch words[0] {
		case "v":
			c, err := corner(words[1:])
			if err != nil {
				return errors.New(where + " " + err.Error())
			}
			corners = append(corners, c)
		case "f":
			face := make([]vec.V3, len(words)-1)
			if len(face) < 3 {
				return errors.New(where + " is a face of fewer than three corners.")
			}
			for i, w := range words[1:] {
				k, ok := number(w, len(corners))
				if !ok {
					return errors.New(where + " names the corner " + strconv.Quote(w) + ", which the file has not given before.")
				}
				face[i] = corners[k]
			}
			for i := 2; i < len(face); i++ {
				if err := b.triangle([3]vec.V3{face[0], face[i-1], face[i]}); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// corner reads the place of a corner; a weight or colour after it is passed over.
func corner(words []string) (c vec.V3, err error) {
	if len(words) < 3 {
		return c, errors.New("is a corner without three numbers.")
	}
	for k := range 3 {
		x, err := strconv.ParseFloat(words[k], 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
			return c, errors.New("holds " + strconv.Quote(words[k]) + ", which is no number.")
		}
		c[k] = x
	}
	return c, nil
}

// number is the index of the corner that a face names: from 1 on, or back from the last one given with a
// minus sign; what follows a stroke is texture and normal.
func number(word string, given int) (int, bool) {
	word, _, _ = strings.Cut(word, "/")
	k, err := strconv.Atoi(word)
	switch {
	case err != nil:
		return 0, false
	case k < 0:
		k += given
	default:
		k--
	}
	return k, k >= 0 && k < given
}
