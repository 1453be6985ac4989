/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/boards-header.h"

#include "config.h"
#include "core/units.h"
#include "plan/document.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What may stand between a name and its unit, and around both. */
#define MARKS " _,()[]\t"

/* The rest of a heading behind a name, NULL when it does not begin with that name as a word. */
static const char *
skip_name (const char *folded, const char *name)
{
  g_autofree char *own = g_utf8_casefold (name, -1);
  gsize length = strlen (own);

  if (!g_str_has_prefix (folded, own))
    return NULL;
  return folded[length] == '\0' || strchr (MARKS, folded[length]) != NULL ? folded + length : NULL;
}

/* The column that a heading names, by its key or its title, and what follows the name; -1: none. */
static int
find_column (const char *folded, const char **rest)
{
  int found = -1;

  for (int i = 0; i < BS_N_BOARD_COLUMNS; i++)
    {
      const char *names[] = { bs_board_columns[i].key, _ (bs_board_columns[i].title) };

      for (gsize k = 0; k < G_N_ELEMENTS (names); k++)
        {
          const char *behind = skip_name (folded, names[k]);
          /* The longest name: a title may begin with another. */
          if (behind != NULL && (found < 0 || behind > *rest))
            {
              found = i;
              *rest = behind;
            }
        }
    }
  return found;
}

static char *
cut_unit (const char *rest)
{
  const char *start = rest + strspn (rest, MARKS);
  gsize length = strlen (start);

  while (length > 0 && strchr (MARKS, start[length - 1]) != NULL)
    length--;
  return g_strndup (start, length);
}

static gboolean
is_unit_of (const char *unit, const BsBoardColumnInfo *info, const BsPlan *plan)
{
  g_autofree char *one = g_strconcat ("1 ", unit, NULL);
  double value = 0.0;

  if (info->limit != NULL)
    return bs_units_parse (one, info->limit->quantity, plan->units, &value, NULL);
  return g_str_equal (info->key, bs_board_columns[BS_BOARD_PRICE].key)
         && g_ascii_strcasecmp (unit, plan->currency) == 0;
}

/* The heading of a cell; its column is -1 when none is named so. */
static BsBoardsHeading
read_heading (const char *cell, const BsPlan *plan)
{
  g_autofree char *copy = g_strstrip (g_strdup (cell));
  g_autofree char *folded = g_utf8_casefold (copy, -1);
  const char *rest = NULL;
  BsBoardsHeading heading = { find_column (folded, &rest), NULL };

  if (heading.column < 0)
    return heading;
  g_autofree char *unit = cut_unit (rest);
  if (*unit != '\0' && !is_unit_of (unit, &bs_board_columns[heading.column], plan))
    heading.column = -1;
  else if (*unit != '\0' && bs_board_columns[heading.column].limit != NULL)
    heading.unit = g_steal_pointer (&unit);
  return heading;
}

static void
clear_heading (gpointer data)
{
  g_free (((BsBoardsHeading *)data)->unit);
}

static gboolean
has_column (const GArray *headings, int column)
{
  for (guint i = 0; i < headings->len; i++)
    if (g_array_index (headings, BsBoardsHeading, i).column == column)
      return TRUE;
  return FALSE;
}

GArray *
bs_boards_header_read (const BsCsvRow *row, const BsPlan *plan, BsBoardsTell tell, gpointer data)
{
  GArray *headings = g_array_new (FALSE, FALSE, sizeof (BsBoardsHeading));
  g_array_set_clear_func (headings, clear_heading);

  for (guint i = 0; i < row->cells->len; i++)
    {
      const char *cell = row->cells->pdata[i];
      BsBoardsHeading heading = read_heading (cell, plan);

      if (heading.column < 0 && *cell != '\0')
        /* Translators: %s is the title of a column in a file. */
        tell (g_strdup_printf (
                  _ ("The column “%s” is not known, or its unit is not; it is left out."), cell),
              data);
      else if (heading.column >= 0 && has_column (headings, heading.column))
        {
          tell (
              g_strdup_printf (_ ("The column “%s” stands there twice; the first is read."), cell),
              data);
          heading.column = -1;
        }
      g_array_append_val (headings, heading);
    }
  return headings;
}

gboolean
bs_boards_header_knows (const char *cell, const BsPlan *plan)
{
  BsBoardsHeading heading = read_heading (cell, plan);

  clear_heading (&heading);
  return heading.column >= 0;
}

gboolean
bs_boards_header_check (const GArray *headings, GError **error)
{
  for (int i = 0; i < BS_N_BOARD_COLUMNS; i++)
    if (bs_board_columns[i].is_needed && !has_column (headings, i))
      {
        g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_FORMAT,
                     /* Translators: the word in quotation marks is the name of a column and is not
                      * translated, nor are label, wood, thickness ... */
                     _ ("The first line has no column “%s”. Expected are the names of the columns: "
                        "thickness, width and length, and, where known, label, wood, moisture, "
                        "price, bow, crook, cup, twist, pith_y, pith_z."),
                     bs_board_columns[i].key);
        return FALSE;
      }
  return TRUE;
}

char *
bs_boards_header_write (BsBoardColumn column, const BsPlan *plan)
{
  const BsBoardColumnInfo *info = &bs_board_columns[column];

  if (info->limit != NULL)
    return g_strdup_printf ("%s (%s)", info->key,
                            bs_units_symbol (info->limit->quantity, plan->units));
  return column == BS_BOARD_PRICE ? g_strdup_printf ("%s (%s)", info->key, plan->currency)
                                  : g_strdup (info->key);
}
