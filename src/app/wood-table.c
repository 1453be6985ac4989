/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-table.h"

#include <glib/gi18n.h>

#include "plan/own-tables.h"
#include "plan/tables.h"
#include "words/table-names.h"

struct _BsWoodTable
{
  GObject parent_instance;

  GPtrArray *woods; /* BsWood, sorted */
  char *problem;
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsWoodTable, bs_wood_table, G_TYPE_OBJECT)

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_utf8_collate (bs_words_wood (*(const BsWood *const *)a),
                         bs_words_wood (*(const BsWood *const *)b));
}

static gpointer
share_wood (gconstpointer wood, gpointer data)
{
  return bs_wood_ref ((BsWood *)wood);
}

static GPtrArray *
share_woods (const GPtrArray *woods)
{
  GPtrArray *shared = g_ptr_array_copy ((GPtrArray *)woods, share_wood, NULL);

  g_ptr_array_set_free_func (shared, (GDestroyNotify)bs_wood_unref);
  return shared;
}

static void
read_woods (BsWoodTable *self)
{
  g_autofree char *path = bs_own_tables_get_path ();
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->woods, g_ptr_array_unref);
  g_clear_pointer (&self->problem, g_free);
  self->woods = bs_own_tables_load_woods (path, &error);
  if (self->woods == NULL)
    {
      /* Translators: the path of a file, and why it cannot be used. */
      self->problem = g_strdup_printf (
          _ ("Your own table of woods, %s, is not used: %s. The program’s table stands in for it."),
          path, error->message);
      self->woods = share_woods (bs_tables_get_woods ());
    }
  g_ptr_array_sort (self->woods, compare_names);
}

static void
bs_wood_table_finalize (GObject *object)
{
  BsWoodTable *self = BS_WOOD_TABLE (object);

  g_clear_pointer (&self->woods, g_ptr_array_unref);
  g_clear_pointer (&self->problem, g_free);
  G_OBJECT_CLASS (bs_wood_table_parent_class)->finalize (object);
}

static void
bs_wood_table_class_init (BsWoodTableClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_wood_table_finalize;
  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_WOOD_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
bs_wood_table_init (BsWoodTable *self)
{
  read_woods (self);
}

BsWoodTable *
bs_wood_table_get (void)
{
  static BsWoodTable *table;

  if (table == NULL)
    table = g_object_new (BS_TYPE_WOOD_TABLE, NULL);
  return table;
}

static int
find_row (const GPtrArray *woods, const char *id)
{
  for (guint i = 0; i < woods->len; i++)
    if (g_str_equal (((const BsWood *)woods->pdata[i])->id, id))
      return (int)i;
  return -1;
}

BsWood *
bs_wood_table_find (BsWoodTable *self, const char *id)
{
  g_return_val_if_fail (BS_IS_WOOD_TABLE (self), NULL);
  g_return_val_if_fail (id != NULL, NULL);

  const int at = find_row (self->woods, id);
  return at >= 0 ? self->woods->pdata[at] : NULL;
}

GPtrArray *
bs_wood_table_list (BsWoodTable *self, const BsPlan *plan)
{
  g_return_val_if_fail (BS_IS_WOOD_TABLE (self), NULL);

  GPtrArray *list = share_woods (self->woods);
  gboolean has_more = FALSE;

  for (guint i = 0; i < plan->woods->len; i++)
    {
      BsWood *wood = bs_wood_ref (plan->woods->pdata[i]);
      const int at = find_row (list, wood->id);

      if (at >= 0)
        {
          bs_wood_unref (list->pdata[at]);
          list->pdata[at] = wood;
        }
      else
        {
          g_ptr_array_add (list, wood);
          has_more = TRUE;
        }
    }
  if (has_more)
    g_ptr_array_sort (list, compare_names);
  return list;
}

const char *
bs_wood_table_get_problem (BsWoodTable *self)
{
  g_return_val_if_fail (BS_IS_WOOD_TABLE (self), NULL);

  return self->problem;
}

/* What the file does not speak of is the program's own row. */
gboolean
bs_wood_table_is_kept (BsWoodTable *self, const char *id)
{
  return bs_wood_table_find (self, id) != bs_tables_find_wood (id);
}

static void
read_again (BsWoodTable *self)
{
  read_woods (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
bs_wood_table_keep (BsWoodTable *self, const BsWood *wood, GError **error)
{
  g_return_val_if_fail (BS_IS_WOOD_TABLE (self), FALSE);

  g_autofree char *path = bs_own_tables_get_path ();
  if (!bs_own_tables_keep_wood (path, wood, error))
    return FALSE;
  read_again (self);
  return TRUE;
}

gboolean
bs_wood_table_forget (BsWoodTable *self, const char *id, GError **error)
{
  g_return_val_if_fail (BS_IS_WOOD_TABLE (self), FALSE);

  g_autofree char *path = bs_own_tables_get_path ();
  if (!bs_own_tables_forget_wood (path, id, error))
    return FALSE;
  read_again (self);
  return TRUE;
}
