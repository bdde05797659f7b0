package bench

import (
	"encoding/csv"
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Bounds of a file: more is refused with a sentence.
const (
	mostBytes   = 1 << 20
	mostLines   = 5000
	mostColumns = 64
	mostRows    = 1000 // of a table, those of a plan
)

// Sheet is a file of static test rows, cut into cells.
type Sheet struct {
	Names        []string   // of the columns, from the first line that is no number
	Cells        [][]string // the lines below it, each of len(Names)
	Lines        []int      // of the file, counted from 1, for every row of Cells
	DecimalComma bool       // 1,5 is one and a half
}

// Cut reads a text as lines of cells. The separator is the one of tab, semicolon, comma and bar that cuts most
// lines alike. It fails with a sentence.
func Cut(text string) (Sheet, error) {
	switch text = strings.TrimPrefix(text, "\ufeff"); {
	case len(text) > mostBytes:
		return Sheet{}, errors.New("The file is larger than 1 MB; keep the rows of one test.")
	case strings.TrimSpace(text) == "":
		return Sheet{}, errors.New("The file is empty.")
	case !utf8.ValidString(text) || strings.ContainsRune(text, 0):
		return Sheet{}, errors.New("The file is not text in UTF-8; save it as CSV.")
	}
	comma := separator(text)
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes, r.TrimLeadingSpace = comma, -1, true, comma != '\t'
	s := Sheet{}
	for len(s.Cells) <= mostLines {
		cells, err := r.Read()
		if cells == nil {
			break // the end: LazyQuotes leaves no other error that ends a text
		}
		if err != nil {
			continue
		}
		line, _ := r.FieldPos(0)
		if err := s.add(cells, line); err != nil {
			return Sheet{}, err
		}
	}
	switch {
	case s.Names == nil:
		return Sheet{}, errors.New("The file has no line with the names of its columns.")
	case len(s.Cells) > mostLines:
		return Sheet{}, errors.New("The file has more than " + strconv.Itoa(mostLines) + " lines; keep the rows of one test.")
	}
	s.DecimalComma = comma != ',' && s.commas()
	return s, nil
}

// add takes one line of the file.
func (s *Sheet) add(cells []string, line int) error {
	any := false
	for i, c := range cells {
		cells[i] = strings.TrimSpace(c)
		any = any || cells[i] != ""
	}
	switch {
	case !any || strings.HasPrefix(cells[0], "#"): // a blank line or a remark
	case len(cells) > mostColumns:
		return errors.New("Line " + strconv.Itoa(line) + " has more than " + strconv.Itoa(mostColumns) + " columns.")
	case s.Names == nil && (len(cells) < 2 || isNumber(cells[0]) || isNumber(cells[1])): // a title, or numbers that nobody named
		if len(cells) > 1 {
			return errors.New("Line " + strconv.Itoa(line) + " holds numbers, but no line before it names the columns.")
		}
	case s.Names == nil:
		s.Names = cells
	default:
		for len(cells) < len(s.Names) {
			cells = append(cells, "")
		}
		s.Cells = append(s.Cells, cells[:len(s.Names)])
		s.Lines = append(s.Lines, line)
	}
	return nil
}

// separator is the one that cuts most of the first lines into equally many cells; the first of equals, so that decimal
// commas between semicolons are none.
func separator(text string) rune {
	lines := strings.SplitN(text, "\n", 30)
	best, most := ',', 0
	for _, c := range "\t;,|" {
		alike := map[int]int{}
		for _, l := range lines[:min(len(lines), 29)] {
			if n := strings.Count(l, string(c)); n > 0 {
				alike[n]++
				if alike[n] > most {
					best, most = c, alike[n]
				}
			}
		}
	}
	return best
}

// commas tells that a cell holds a number with a comma, and none one with a point.
func (s *Sheet) commas() bool {
	comma := false
	for _, row := range s.Cells {
		for _, c := range row {
			if strings.Count(c, ",") == 1 && isNumber(c) {
				comma = true
			} else if strings.Contains(c, ".") && isNumber(c) {
				return false
			}
		}
	}
	return comma
}

// isNumber tells whether a cell is a number, with a point or a comma.
func isNumber(c string) bool {
	_, err := strconv.ParseFloat(strings.Replace(strings.TrimSuffix(c, "%"), ",", ".", 1), 64)
	return err == nil && strings.ContainsAny(c, "0123456789")
}
