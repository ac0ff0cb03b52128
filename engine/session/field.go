package session

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strconv"
	"strings"
	"time"
	"unicode"

	"github.com/google/uuid"

	"coilbook/engine/meter"
)

const chooseAnother = "choose a file that Coilbook saved"

// fieldOf turns a decoder's error about b into one that names the field.
func fieldOf(b []byte, err error) error {
	var typ *json.UnmarshalTypeError
	var syn *json.SyntaxError
	var tim *time.ParseError
	var described *meter.FieldError
	unknown, isUnknown := strings.CutPrefix(err.Error(), "json: unknown field ")
	switch {
	case errors.As(err, &described): // of a detector's name, the one text that the meter reads itself
		return within("setup.ownMeter.learned", asField(described))
	case errors.As(err, &typ):
		return wrongType(typ)
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF), strings.Contains(err.Error(), "unexpected end of JSON"):
		return &FieldError{"file", "is empty or cut short", "choose a whole file"}
	case errors.As(err, &syn):
		return &FieldError{"file", fmt.Sprintf("is not JSON at byte %d (%s)", syn.Offset, syn.Error()), chooseAnother}
	case errors.As(err, &tim), strings.HasPrefix(err.Error(), "Time.UnmarshalJSON"):
		return &FieldError{"at", "is not a time like 2026-05-01T09:30:00Z", "correct the field"}
	case isUnknown:
		return &FieldError{unquoted(unknown), "is not a field of this place", "remove it, or correct its spelling"}
	}
	if field, found := wrongID(b); found {
		return &FieldError{field, "is not a UUID", "correct the field"}
	}
	return &FieldError{"file", strconv.Quote(err.Error()), chooseAnother}
}

func unquoted(name string) string {
	if plain, err := strconv.Unquote(name); err == nil && plain != "" && !strings.ContainsFunc(plain, unicode.IsControl) && len(plain) < 40 {
		return plain
	}
	return name
}

func wrongType(e *json.UnmarshalTypeError) error {
	field := e.Field
	if field == "" {
		field = "file"
	}
	got, _, _ := strings.Cut(e.Value, " ") // "number 1.5" says more than fits a sentence
	return &FieldError{field, "holds " + article(got) + " where " + kindName(e.Type) + " belongs", "correct the field"}
}

func article(got string) string {
	return map[string]string{"string": "a text", "array": "a list", "object": "an object", "bool": "true or false", "number": "a number"}[got]
}

var readsText = reflect.TypeFor[encoding.TextUnmarshaler]()

func kindName(t reflect.Type) string {
	if t.Kind() != reflect.Array && reflect.PointerTo(t).Implements(readsText) {
		return "a text" // a number inside, as a detector is
	}
	switch t.Kind() {
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "true or false"
	case reflect.Int:
		return "a whole number"
	case reflect.Float64:
		return "a number"
	case reflect.Slice:
		return "a list"
	case reflect.Array: // of bytes: a UUID
		return "a UUID"
	}
	return "an object"
}

// wrongID finds the field whose UUID the decoder refused without naming it.
func wrongID(b []byte) (field string, found bool) {
	var ids struct {
		ID      *string `json:"id"`
		Reading struct {
			Corrects *string `json:"corrects"`
		} `json:"reading"`
		Setup struct {
			Own struct {
				Record *string `json:"record"`
			} `json:"ownMeter"`
		} `json:"setup"`
	}
	_ = json.Unmarshal(b, &ids) // what it cannot read is none of these three
	switch {
	case isWrong(ids.ID):
		return "id", true
	case isWrong(ids.Reading.Corrects):
		return "reading.corrects", true
	case isWrong(ids.Setup.Own.Record):
		return "setup.ownMeter.record", true
	}
	return "", false
}

func isWrong(id *string) bool { return id != nil && uuid.Validate(*id) != nil }
