/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/text.h"
#include "core/units-private.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

/* What a person types is first put into one spelling (lower case, plain spaces, straight quotes,
 * x/y for the fraction signs, m2 for m²) and then read as one or more terms of a number and a unit:
 * 8' 6 1/2" is two. */

GQuark
bs_units_error_quark (void)
{
  return g_quark_from_static_string ("bs-units-error-quark");
}

/* A sentence for each quantity that ends every error. */
static const char *const expectations[] = {
  [BS_QUANTITY_LENGTH]
  = N_ ("A length is expected, such as 2440 mm, 2.44 m, 4 1/2 in, 8' 6\" or 8/4."),
  [BS_QUANTITY_AREA] = N_ ("An area is expected, such as 0.2 m2 or 2 sq ft."),
  [BS_QUANTITY_VOLUME] = N_ ("A volume is expected, such as 0.05 m3 or 20 bd ft."),
  [BS_QUANTITY_FORCE] = N_ ("A force is expected, such as 4.5 kN, 4500 N or 1000 lbf."),
  [BS_QUANTITY_LINE_FORCE]
  = N_ ("A force for each length is expected, such as 60 N/mm or 340 lbf/in."),
  [BS_QUANTITY_PRESSURE] = N_ ("A pressure is expected, such as 0.8 MPa or 120 psi."),
  [BS_QUANTITY_TORQUE] = N_ ("A torque is expected, such as 10 N m or 7 lbf ft."),
  [BS_QUANTITY_TIME] = N_ ("A time is expected, such as 12 s, 5 min, 12 min 30 s or 1.5 h."),
  [BS_QUANTITY_MASS] = N_ ("A mass is expected, such as 25 kg or 55 lb."),
  [BS_QUANTITY_DENSITY] = N_ ("A density is expected, such as 700 kg/m3 or 44 lb/ft3."),
  [BS_QUANTITY_SPREAD] = N_ ("A spread is expected, such as 180 g/m2 or 37 lb/1000 ft2."),
  [BS_QUANTITY_SPREAD_TIME]
  = N_ ("A time for each area is expected, such as 200 s/m2 or 20 s/ft2."),
  [BS_QUANTITY_TEMPERATURE] = N_ ("A temperature is expected, such as 20 °C or 68 °F."),
  [BS_QUANTITY_PERCENT] = N_ ("A percentage is expected, such as 8.5 %."),
  [BS_QUANTITY_COUNT] = N_ ("A whole number is expected, such as 12."),
  [BS_QUANTITY_RATIO] = N_ ("A number is expected, such as 0.63."),
  [BS_QUANTITY_MONEY] = N_ ("A price is expected, such as 42.50."),
};

typedef struct
{
  const char *text; /* as typed, for errors */
  const char *rest; /* what is left of the one spelling */
  BsQuantity quantity;
} Reader;

/* The text stands first and bare: quotes would be lost among the marks for feet and inches. */
static gboolean
fail (const Reader *reader, BsUnitsError code, const char *sentence, GError **error)
{
  g_autofree char *found = bs_text_excerpt (reader->text);

  g_set_error (error, BS_UNITS_ERROR, (int)code, "%s%s%s %s", found, *found != '\0' ? ": " : "",
               sentence, _ (expectations[reader->quantity]));
  return FALSE;
}

static void
append_plain (GString *plain, gunichar c)
{
  static const struct
  {
    gunichar from;
    const char *to;
  } spellings[] = {
    { 0xbc, " 1/4" },   { 0xbd, " 1/2" },   { 0xbe, " 3/4" },   { 0x215b, " 1/8" },
    { 0x215c, " 3/8" }, { 0x215d, " 5/8" }, { 0x215e, " 7/8" }, { 0x2044, "/" },
    { 0xb2, "2" },      { 0xb3, "3" },      { 0x2019, "'" },    { 0x2032, "'" },
    { 0x201d, "\"" },   { 0x2033, "\"" },   { 0x2212, "-" },    { 0xb0, "" },
    { 0xb7, "" },       { 0x22c5, "" },     { '^', "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (spellings); i++)
    if (spellings[i].from == c)
      {
        g_string_append (plain, spellings[i].to);
        return;
      }
  g_string_append_unichar (plain, g_unichar_isspace (c) ? ' ' : g_unichar_tolower (c));
}

static char *
spell_plainly (const char *text)
{
  GString *plain = g_string_new (NULL);

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    append_plain (plain, g_utf8_get_char (p));
  return g_strstrip (g_string_free (plain, FALSE));
}

static void
skip_spaces (const char **text)
{
  while (**text == ' ')
    (*text)++;
}

static gsize
count_digits (const char *text)
{
  return strspn (text, "0123456789");
}

/* 2,440 is two thousand to one reader and two and a half to another; where the mark is not the
 * locale's own, such a number is refused. */
static gboolean
is_ambiguous (const char *text, gsize whole, char mark, gsize decimals)
{
  const char *own = localeconv ()->decimal_point;
  return *own != mark && whole >= 1 && whole <= 3 && *text != '0' && decimals == 3;
}

/* How many bytes the whole part of a number takes, digits in groups of three included: "12 500".
 * What a fraction begins with is no group: "5 125/1000". */
static gsize
count_whole (const char *text)
{
  gsize whole = count_digits (text);

  if (whole == 0 || whole > 3)
    return whole;
  while (text[whole] == ' ' && count_digits (text + whole + 1) == 3 && text[whole + 4] != '/')
    whole += 4;
  return whole;
}

/* A decimal number, its mark a point or a comma. */
static gboolean
read_decimal (Reader *reader, double *value, GError **error)
{
  const char *text = reader->rest;
  gsize whole = count_whole (text);
  gsize decimals = 0;
  gboolean has_mark = text[whole] == '.' || text[whole] == ',';

  if (has_mark)
    decimals = count_digits (text + whole + 1);
  if (whole + decimals == 0 || whole + decimals > 18)
    return fail (reader, BS_UNITS_ERROR_SYNTAX, _ ("this cannot be read."), error);
  if (has_mark && is_ambiguous (text, whole, text[whole], decimals))
    return fail (reader, BS_UNITS_ERROR_SYNTAX,
                 _ ("this could mean thousands or a part; write it without a mark for thousands."),
                 error);

  reader->rest += whole + (has_mark ? 1 + decimals : 0);
  g_autofree char *typed = g_strndup (text, (gsize)(reader->rest - text));
  g_auto (GStrv) groups = g_strsplit (typed, " ", -1);
  g_autofree char *digits = g_strjoinv ("", groups);
  g_strdelimit (digits, ",", '.');
  *value = g_ascii_strtod (digits, NULL);
  return TRUE;
}

/* How many bytes a fraction "3/4" takes here, 0 when there is none. */
static gsize
count_fraction (const char *text)
{
  gsize numerator = count_digits (text);
  if (numerator == 0 || text[numerator] != '/')
    return 0;
  gsize denominator = count_digits (text + numerator + 1);
  return denominator == 0 ? 0 : numerator + 1 + denominator;
}

static gboolean
read_fraction (Reader *reader, double *value, GError **error)
{
  double numerator = 0.0;
  double denominator = 0.0;

  if (!read_decimal (reader, &numerator, error))
    return FALSE;
  reader->rest++;
  if (!read_decimal (reader, &denominator, error))
    return FALSE;
  if (denominator < 1.0)
    return fail (reader, BS_UNITS_ERROR_SYNTAX, _ ("this divides by nothing."), error);
  *value = numerator / denominator;
  return TRUE;
}

/* "12", "3/4", "1 3/4" or "1-3/4". */
static gboolean
read_number (Reader *reader, double *value, gboolean *is_fraction, GError **error)
{
  *is_fraction = count_fraction (reader->rest) > 0;
  if (*is_fraction)
    return read_fraction (reader, value, error);
  if (!read_decimal (reader, value, error))
    return FALSE;

  const char *next = reader->rest;
  if (*next == '-')
    next++;
  else
    skip_spaces (&next);
  if (next == reader->rest || count_fraction (next) == 0)
    return TRUE;

  double part = 0.0;
  reader->rest = next;
  *is_fraction = TRUE;
  if (!read_fraction (reader, &part, error))
    return FALSE;
  *value += part;
  return TRUE;
}

/* How many bytes of the text spell the name, spaces within it not counting; 0 when they do not. */
static gsize
match_name (const char *text, const char *name)
{
  const char *p = text;

  for (; *name != '\0'; name++)
    {
      skip_spaces (&p);
      if (*p != *name)
        return 0;
      p++;
    }
  return g_ascii_isalpha (p[-1]) && g_ascii_isalpha (*p) ? 0 : (gsize)(p - text);
}

static const BsUnitName *
read_unit (Reader *reader)
{
  const BsUnitName *best = NULL;
  gsize longest = 0;

  for (gsize i = 0; i < bs_n_unit_names; i++)
    {
      gsize length = bs_unit_names[i].quantity == reader->quantity
                         ? match_name (reader->rest, bs_unit_names[i].name)
                         : 0;
      if (length > longest)
        {
          longest = length;
          best = &bs_unit_names[i];
        }
    }
  reader->rest += longest;
  return best;
}

static gboolean
is_foot (const BsUnitName *unit)
{
  return unit->quantity == BS_QUANTITY_LENGTH && fabs (unit->size - BS_MM_PER_FOOT) < 1.0;
}

/* The unit of a number that stands alone: a fraction of a length is of an inch everywhere, what
 * follows feet is inches; a time has to say. */
static gboolean
choose_unit (const Reader *reader, BsUnitSystem system, const BsUnitName *former,
             gboolean is_fraction, BsUnitName *unit, GError **error)
{
  const BsUnitScale *scale = bs_units_get_scale (reader->quantity, system);

  if (*reader->rest != '\0' && !g_ascii_isdigit (*reader->rest))
    return fail (reader, BS_UNITS_ERROR_UNIT, _ ("the unit is not known here."), error);
  if (reader->quantity == BS_QUANTITY_TIME || (former != NULL && !is_foot (former)))
    return fail (reader, BS_UNITS_ERROR_UNIT, _ ("the unit is missing."), error);

  *unit = (BsUnitName){ reader->quantity, scale->symbol, scale->size, scale->zero };
  if (former != NULL || (reader->quantity == BS_QUANTITY_LENGTH && is_fraction))
    unit->size = BS_MM_PER_INCH;
  return TRUE;
}

static gboolean
can_follow (BsQuantity quantity, const BsUnitName *former, const BsUnitName *unit)
{
  return (quantity == BS_QUANTITY_LENGTH || quantity == BS_QUANTITY_TIME)
         && unit->size < former->size;
}

static gboolean
read_terms (Reader *reader, BsUnitSystem system, double sign, double *sum, GError **error)
{
  BsUnitName former = { 0 };

  *sum = 0.0;
  for (guint n = 0; n == 0 || *reader->rest != '\0'; n++)
    {
      double number = 0.0;
      gboolean is_fraction = FALSE;
      BsUnitName unit = { 0 };

      if (!read_number (reader, &number, &is_fraction, error))
        return FALSE;
      skip_spaces (&reader->rest);
      const BsUnitName *named = read_unit (reader);
      if (named != NULL)
        unit = *named;
      else if (!choose_unit (reader, system, n > 0 ? &former : NULL, is_fraction, &unit, error))
        return FALSE;
      if (n > 0 && !can_follow (reader->quantity, &former, &unit))
        return fail (reader, BS_UNITS_ERROR_SYNTAX, _ ("this cannot be read."), error);

      *sum += sign * number * unit.size + unit.zero;
      former = unit;
      skip_spaces (&reader->rest);
    }
  return TRUE;
}

gboolean
bs_units_parse (const char *text, BsQuantity quantity, BsUnitSystem system, double *value,
                GError **error)
{
  g_return_val_if_fail (text != NULL && value != NULL, FALSE);

  if (quantity == BS_QUANTITY_FINE_LENGTH)
    quantity = BS_QUANTITY_LENGTH;

  Reader reader = { text, text, quantity };
  if (!g_utf8_validate (text, -1, NULL))
    {
      reader.text = "\u2026";
      return fail (&reader, BS_UNITS_ERROR_SYNTAX, _ ("this is not text."), error);
    }

  g_autofree char *plain = spell_plainly (text);
  gboolean is_negative = *plain == '-';
  double sign = is_negative ? -1.0 : 1.0;
  double sum = 0.0;
  reader.rest = plain + (is_negative ? 1 : 0);
  skip_spaces (&reader.rest);
  if (*reader.rest == '\0')
    return fail (&reader, BS_UNITS_ERROR_SYNTAX, _ ("Nothing is written."), error);
  if (!read_terms (&reader, system, sign, &sum, error))
    return FALSE;
  if (quantity == BS_QUANTITY_COUNT && (sum < floor (sum) || sum > floor (sum)))
    return fail (&reader, BS_UNITS_ERROR_SYNTAX, _ ("this is not a whole number."), error);

  *value = sum;
  return TRUE;
}
