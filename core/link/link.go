// Package link writes a plan as the text of a link, and reads it back.
//
//	p1.<checksum and compressed plan>
//
// The text after the point is base64url without padding (RFC 4648, section 5). Its first four bytes are the CRC-32 (IEEE
// 802.3, as in ISO/IEC 13239), high byte first, of all that follow: a raw deflate stream (RFC 1951) with the
// preset dictionary of the version, of the plan's canonical compact JSON. So the same plan is
// the same text; the plan itself says which liftplan it is.
//
// A checksum of 32 bits finds every change of up to five neighbouring characters; of all other damage it
// misses one in four thousand million.
//
// Every version ever published stays readable: its samples in testdata/links stay, and are tested, for ever.
package link

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"io"
	"strconv"
	"strings"

	"cohoist/core/plan"
)

const (
	prefix     = "p"
	version    = 1
	mostText   = 2 << 20 // characters of a link read at all
	mostPlain  = 1 << 20 // bytes of a plan after inflating
	checkBytes = 4
)

// The errors, as the page says them.
var (
	errNone    = errors.New("The link holds no plan.")
	errForeign = errors.New("The link was not made by this program; a plan's link begins with p1 and a point.")
	errNewer   = errors.New("The link was made by a newer version of this program; load the page again to get it.")
	errCut     = errors.New("The link was cut short; copy it again, to its last character.")
	errChanged = errors.New("The link is damaged: some of its characters were changed or lost; copy it again.")
	errLong    = errors.New("The link is too long to be a plan; plans above 1 MB travel as files.")
)

var encoding = base64.RawURLEncoding.Strict()

// Encode returns the text of a plan for the fragment of a URL, without the #. Any plan can be
// written; one above 1 MB (a large mesh) is not read again, see Fits.
func Encode(p plan.Plan) string {
	var b bytes.Buffer
	b.Write(make([]byte, checkBytes))
	w, err := flate.NewWriterDict(&b, flate.BestCompression, []byte(dict1))
	if err != nil {
		panic("link: " + err.Error()) // only for a level that does not exist
	}
	w.Write(plan.Compact(p)) // a bytes.Buffer takes everything
	w.Close()
	out := b.Bytes()
	binary.BigEndian.PutUint32(out, crc32.ChecksumIEEE(out[checkBytes:]))
	return prefix + strconv.Itoa(version) + "." + encoding.EncodeToString(out)
}

// Fits tells whether a plan can travel as a link; one that is larger is a file.
func Fits(p plan.Plan) bool { return len(plan.Compact(p)) <= mostPlain }

// Decode reads the text of a link, with or without the # before it. The error is one sentence to
// show. The plan is upgraded to the newest format; what its values mean is for plan.Validate.
func Decode(fragment string) (plan.Plan, error) {
	s := strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(fragment), "#"))
	body, err := versionOf(s)
	if err != nil {
		return plan.Blank(), err
	}
	raw, err := encoding.DecodeString(body)
	if err != nil || len(raw) <= checkBytes {
		return plan.Blank(), damage(body, raw)
	}
	if binary.BigEndian.Uint32(raw) != crc32.ChecksumIEEE(raw[checkBytes:]) {
		return plan.Blank(), damage(body, raw)
	}
	plain, err := inflate(raw[checkBytes:])
	if err != nil {
		return plan.Blank(), err
	}
	p, faults := plan.Decode(plain)
	if len(faults) > 0 {
		return plan.Blank(), errors.New("The link holds a plan with a fault: " + faults[0].String())
	}
	return p, nil
}

// versionOf splits a link into what says the version, and the rest.
func versionOf(s string) (body string, err error) {
	head, body, point := strings.Cut(s[:min(len(s), mostText+1)], ".")
	number, ours := strings.CutPrefix(head, prefix)
	n, notNumber := strconv.Atoi(number)
	switch {
	case s == "":
		return "", errNone
	case !point || !ours || notNumber != nil || n < 1 || number != strconv.Itoa(n):
		return "", errForeign
	case n > version:
		return "", errNewer
	case len(s) > mostText:
		return "", errLong
	}
	return body, nil // a version 2 would return its number too, and keep the reader of 1
}

// inflate undoes the compression, up to mostPlain bytes.
func inflate(raw []byte) ([]byte, error) {
	in := bytes.NewReader(raw)
	plain, err := io.ReadAll(io.LimitReader(flate.NewReaderDict(in, []byte(dict1)), mostPlain+1))
	switch {
	case len(plain) > mostPlain:
		return nil, errLong
	case errors.Is(err, io.ErrUnexpectedEOF):
		return nil, errCut
	case err != nil || in.Len() > 0:
		return nil, errChanged
	}
	return plain, nil
}

// damage tells a link that was cut from one that was changed: cut, what is left inflates well until it
// ends too early.
func damage(body string, raw []byte) error {
	if whole := len(body) - len(body)%4; len(raw) < whole/4*3 { // not base64, perhaps only for the spare bits of a cut
		var err error
		if raw, err = encoding.DecodeString(body[:whole]); err != nil {
			return errChanged
		}
	}
	if len(raw) <= checkBytes {
		return errCut
	}
	if _, err := inflate(raw[checkBytes:]); err == errCut {
		return errCut
	}
	return errChanged
}
