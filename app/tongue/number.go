package tongue

import "strings"

// Number writes a number that was printed with a decimal point as people write it
// here. Anything else in the text stays: a point counts only between two digits.
func Number(printed string) string {
	if !now.comma {
		return printed
	}
	out := []byte(printed)
	for i := 1; i+1 < len(out); i++ {
		if out[i] == '.' && digit(out[i-1]) && digit(out[i+1]) {
			out[i] = ','
		}
	}
	return string(out)
}

// Mark is the decimal mark.
func Mark() string {
	if now.comma {
		return ","
	}
	return "."
}

func letter(b byte) bool { return 'A' <= b && b <= 'Z' || 'a' <= b && b <= 'z' }

func digit(b byte) bool { return '0' <= b && b <= '9' }

// Told puts a sentence into the language that another package made with figures or
// quotations in it. Its key has %s in their place: "use 0 to 20" is found as "use %s
// to %s".
func Told(english string) string {
	if say == nil {
		return english
	}
	if s, ok := say[english]; ok {
		return s
	}
	key, values := figures(english)
	s, ok := say[key]
	if !ok {
		return english
	}
	for i, v := range values {
		values[i] = Number(v.(string))
	}
	return filled(s, values)
}

// TellKey is the key that Told looks a sentence up by.
func TellKey(english string) string {
	key, values := figures(english)
	if len(values) == 0 {
		return english
	}
	return key
}

// figures takes numbers and quoted text out of a sentence.
func figures(s string) (key string, values []any) {
	var out strings.Builder
	for i := 0; i < len(s); {
		end := i
		switch {
		case s[i] == '"' || s[i] == '\'' && i > 0 && s[i-1] == ' ':
			if n := strings.IndexByte(s[i+1:], s[i]); n >= 0 {
				end = i + n + 2
			}
		case digit(s[i]) && (i == 0 || s[i-1] == ' ' || s[i-1] == '-'):
			for end < len(s) && (digit(s[end]) || s[end] == '.' && end+1 < len(s) && digit(s[end+1])) {
				end++
			}
			if end < len(s) && letter(s[end]) {
				end = i // such as a code
			}
		}
		if end == i {
			if s[i] == '%' {
				out.WriteByte('%')
			}
			out.WriteByte(s[i])
			i++
			continue
		}
		out.WriteString("%s")
		values = append(values, s[i:end])
		i = end
	}
	return out.String(), values
}

// List joins numbers so that each can be told from its decimals.
func List(numbers []string) string {
	if now.comma {
		return strings.Join(numbers, "; ")
	}
	return strings.Join(numbers, ", ")
}
