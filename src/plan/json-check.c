/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/json-check.h"

#include "config.h"
#include "plan/document.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* The text still to be read. It ends with a NUL, which no JSON text holds, so that one look ahead
 * is always allowed. */
typedef struct
{
  const char *at;
  guint line;
  guint depth;
  GError **error;
} Checker;

static gboolean check_value (Checker *self);

/* What stands at the place of an error, short enough for a sentence. */
static char *
describe_found (const Checker *self)
{
  if (*self->at == '\0')
    return g_strdup (_ ("the end of the file"));

  const gunichar first = g_utf8_get_char (self->at);
  if (!g_unichar_isprint (first))
    return g_strdup_printf (_ ("the character U+%04X"), first);

  const char *end = g_utf8_next_char (self->at);
  const gboolean is_mark = strchr ("[]{},:\"'", *self->at) != NULL;
  while (!is_mark && end - self->at < 16 && (g_ascii_isalnum (*end) || *end == '.' || *end == '_'))
    end++;
  g_autofree char *token = g_strndup (self->at, (gsize)(end - self->at));
  return g_strdup_printf (_ ("“%s”"), token);
}

static gboolean
fail_expected (Checker *self, const char *expected)
{
  g_autofree char *found = describe_found (self);

  g_set_error (self->error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX,
               /* Translators: the line of a file, what stands there, what should. */
               _ ("line %u has %s where %s is expected; correct it in a text editor or take an "
                  "earlier copy of the file"),
               self->line, found, expected);
  return FALSE;
}

static void
skip_space (Checker *self)
{
  for (;; self->at++)
    {
      if (*self->at == '\n')
        self->line++;
      else if (*self->at != ' ' && *self->at != '\t' && *self->at != '\r')
        return;
    }
}

static gboolean
check_char (Checker *self, char wanted, const char *expected)
{
  skip_space (self);
  if (*self->at != wanted)
    return fail_expected (self, expected);
  self->at++;
  return TRUE;
}

/* Four hexadecimal digits after \u. */
static gboolean
read_code_unit (Checker *self, gunichar *unit)
{
  *unit = 0;
  for (guint i = 0; i < 4; i++, self->at++)
    {
      const int digit = g_ascii_xdigit_value (*self->at);
      if (digit < 0)
        return fail_expected (self, _ ("a hexadecimal digit after \\u"));
      *unit = *unit * 16 + (gunichar)digit;
    }
  return TRUE;
}

/* A character given by number: a high surrogate needs its low one; NUL would end a C string early.
 */
static gboolean
read_code_point (Checker *self, GString *value)
{
  const char *start = self->at - 2;
  gunichar point = 0;
  if (!read_code_unit (self, &point))
    return FALSE;

  if (point >= 0xD800 && point <= 0xDBFF && self->at[0] == '\\' && self->at[1] == 'u')
    {
      gunichar low = 0;
      self->at += 2;
      if (!read_code_unit (self, &low))
        return FALSE;
      if (low >= 0xDC00 && low <= 0xDFFF)
        point = 0x10000 + ((point - 0xD800) << 10) + (low - 0xDC00);
    }
  if (point == 0 || (point >= 0xD800 && point <= 0xDFFF))
    {
      self->at = start;
      return fail_expected (self, _ ("the number of a character after \\u"));
    }
  g_string_append_unichar (value, point);
  return TRUE;
}

static gboolean
read_escape (Checker *self, GString *value)
{
  static const char names[] = "\"\\/bfnrt";
  static const char meant[] = "\"\\/\b\f\n\r\t";

  if (*self->at == 'u')
    {
      self->at++;
      return read_code_point (self, value);
    }
  const char *name = *self->at != '\0' ? strchr (names, *self->at) : NULL;
  if (name == NULL)
    return fail_expected (self, _ ("one of \" \\ / b f n r t u after a backslash"));
  g_string_append_c (value, meant[name - names]);
  self->at++;
  return TRUE;
}

/* `value` receives the text that is meant, so that two spellings of one key are known as one. */
static gboolean
read_string (Checker *self, GString *value)
{
  self->at++;
  while (*self->at != '"')
    {
      if (*self->at == '\\')
        {
          self->at++;
          if (!read_escape (self, value))
            return FALSE;
        }
      else if ((guchar)*self->at < 0x20)
        return fail_expected (self, _ ("a double quote that ends the text"));
      else
        g_string_append_c (value, *self->at++);
    }
  self->at++;
  return TRUE;
}

static gboolean
check_digits (Checker *self)
{
  if (!g_ascii_isdigit (*self->at))
    return fail_expected (self, _ ("a digit"));
  while (g_ascii_isdigit (*self->at))
    self->at++;
  return TRUE;
}

static gboolean
check_number (Checker *self)
{
  const char *start = self->at;
  gboolean is_whole = TRUE;

  if (*self->at == '-')
    self->at++;
  if (self->at[0] == '0' && g_ascii_isalnum (self->at[1]) && (self->at[1] | 0x20) != 'e')
    return fail_expected (self, _ ("a decimal number without a leading zero"));
  if (!check_digits (self))
    return FALSE;
  if (*self->at == '.')
    {
      is_whole = FALSE;
      self->at++;
      if (!check_digits (self))
        return FALSE;
    }
  if (*self->at == 'e' || *self->at == 'E')
    {
      is_whole = FALSE;
      self->at++;
      if (*self->at == '+' || *self->at == '-')
        self->at++;
      if (!check_digits (self))
        return FALSE;
    }

  errno = 0;
  if (is_whole)
    (void)g_ascii_strtoll (start, NULL, 10);
  if ((is_whole && errno == ERANGE) || !isfinite (g_ascii_strtod (start, NULL)))
    {
      self->at = start;
      return fail_expected (self, _ ("a number small enough to be kept"));
    }
  return TRUE;
}

static gboolean
check_members (Checker *self, GHashTable *keys, GString *key)
{
  do
    {
      skip_space (self);
      if (*self->at != '"')
        return fail_expected (self, _ ("a key in double quotes"));

      const char *start = self->at;
      g_string_truncate (key, 0);
      if (!read_string (self, key))
        return FALSE;
      if (!g_hash_table_add (keys, g_strdup (key->str)))
        {
          self->at = start + 1;
          return fail_expected (self, _ ("a key that the object does not have yet"));
        }
      if (!check_char (self, ':', _ ("a colon after the key")) || !check_value (self))
        return FALSE;
      skip_space (self);
    }
  while (*self->at == ',' && self->at++);
  return check_char (self, '}', _ ("a comma or a closing brace"));
}

static gboolean
check_object (Checker *self)
{
  self->at++;
  skip_space (self);
  if (*self->at == '}')
    {
      self->at++;
      return TRUE;
    }
  g_autoptr (GHashTable) keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GString) key = g_string_new (NULL);
  return check_members (self, keys, key);
}

static gboolean
check_array (Checker *self)
{
  self->at++;
  skip_space (self);
  if (*self->at == ']')
    {
      self->at++;
      return TRUE;
    }
  do
    {
      if (!check_value (self))
        return FALSE;
      skip_space (self);
    }
  while (*self->at == ',' && self->at++);
  return check_char (self, ']', _ ("a comma or a closing bracket"));
}

static gboolean
check_word (Checker *self)
{
  static const char *const words[] = { "true", "false", "null" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_has_prefix (self->at, words[i]) && !g_ascii_isalnum (self->at[strlen (words[i])]))
      {
        self->at += strlen (words[i]);
        return TRUE;
      }
  return fail_expected (self,
                        _ ("a value (a text in double quotes, a number, true, false, a list or "
                           "an object)"));
}

static gboolean
check_container (Checker *self)
{
  if (self->depth >= BS_JSON_MAX_DEPTH)
    return fail_expected (self, _ ("no deeper nesting than 64 levels"));
  self->depth++;
  const gboolean is_good = *self->at == '{' ? check_object (self) : check_array (self);
  self->depth--;
  return is_good;
}

static gboolean
check_value (Checker *self)
{
  skip_space (self);
  if (*self->at == '{' || *self->at == '[')
    return check_container (self);
  if (*self->at == '-' || g_ascii_isdigit (*self->at))
    return check_number (self);
  if (*self->at != '"')
    return check_word (self);

  g_autoptr (GString) value = g_string_new (NULL);
  return read_string (self, value);
}

gboolean
bs_json_check (const char *text, gsize length, GError **error)
{
  const char *bad = NULL;

  if (length > BS_JSON_MAX_BYTES)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX,
                   _ ("it holds more than %d MB; is it the right file?"),
                   (int)(BS_JSON_MAX_BYTES >> 20));
      return FALSE;
    }
  if (!g_utf8_validate_len (text, length, &bad))
    {
      guint line = 1;
      for (const char *p = text; p < bad; p++)
        line += *p == '\n';
      g_set_error (
          error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX,
          _ ("line %u has a byte of value %d where text in UTF-8 is expected; is it the right "
             "file?"),
          line, (guchar)*bad);
      return FALSE;
    }

  Checker checker = { .at = text, .line = 1, .error = error };
  if (!check_value (&checker))
    return FALSE;
  skip_space (&checker);
  return *checker.at == '\0' || fail_expected (&checker, _ ("the end of the file"));
}
