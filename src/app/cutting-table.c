/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-table.h"

#include <glib/gi18n.h>

#include "core/sawing-rack.h"
#include "core/units.h"
#include "words/sawing.h"

struct _BsCuttingTable
{
  GtkWidget parent_instance;

  BsSession *session;
  GtkWidget *scroller;
  GtkStringList *rows; /* "3": the place of a cut; "-3": the place of a wish, from 1 */
  GtkSingleSelection *selection;
  BsPlan *plan; /* that the rows are of */
  GArray *wishes;
};

enum
{
  PROP_0,
  PROP_SELECTED,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (BsCuttingTable, bs_cutting_table, GTK_TYPE_WIDGET)

/* The columns: what a cut or a wish without a place says in each. The texts are the caller's. */

static char *
format_length (const BsPlan *plan, double mm)
{
  return bs_units_format (mm, BS_QUANTITY_LENGTH, plan->units);
}

static char *
tell_piece (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  if (cut != NULL)
    return g_strdup (bs_saw_piece_label (plan, cut->piece));
  int missing = bs_saw_count_missing (plan, wish);
  if (wish->count == 1)
    return g_strdup (wish->label);
  /* Translators: a part's name, how many of it have no place, how many are wanted. */
  return g_strdup_printf (_ ("%s, %d of %d"), wish->label, missing, wish->count);
}

static char *
tell_board (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  const BsBoard *board = cut != NULL ? bs_plan_find_board (plan, cut->board) : NULL;

  return g_strdup (board != NULL ? bs_saw_board_label (board) : "");
}

static char *
tell_x (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  return cut != NULL ? format_length (plan, cut->x) : g_strdup ("");
}

static char *
tell_y (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  return cut != NULL ? format_length (plan, cut->y) : g_strdup ("");
}

static char *
tell_length (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  return format_length (plan, cut != NULL ? cut->length : wish->rough_length);
}

static char *
tell_width (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  return format_length (plan, cut != NULL ? cut->width : wish->rough_width);
}

/* What the board allows; the piece is milled to what is wished. */
static char *
tell_reach (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  const BsBoard *board = cut != NULL ? bs_plan_find_board (plan, cut->board) : NULL;

  return board != NULL ? format_length (plan, bs_saw_reach (plan, board, cut->length, cut->width))
                       : g_strdup ("");
}

static char *
tell_state (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  return g_strdup (cut != NULL ? bs_words_cut_state (cut) : C_ ("state of a piece", "no place"));
}

static char *
tell_remarks (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish)
{
  return cut != NULL ? bs_words_cut_defects (plan, cut) : bs_words_saw_lack (plan, wish);
}

typedef struct
{
  const char *title; /* N_() */
  char *(*tell) (const BsPlan *plan, const BsCut *cut, const BsSawWish *wish);
  gboolean is_number;
  gboolean expands;
} Column;

static const Column columns[] = {
  { N_ ("Piece"), tell_piece, FALSE, FALSE },
  { N_ ("Board"), tell_board, FALSE, FALSE },
  { N_ ("From left end"), tell_x, TRUE, FALSE },
  { N_ ("From front edge"), tell_y, TRUE, FALSE },
  { N_ ("Sawn length"), tell_length, TRUE, FALSE },
  { N_ ("Sawn width"), tell_width, TRUE, FALSE },
  { N_ ("Planes to, at most"), tell_reach, TRUE, FALSE },
  { N_ ("State"), tell_state, FALSE, FALSE },
  { N_ ("Remarks"), tell_remarks, FALSE, TRUE },
};

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const Column *column)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column->is_number ? 1.0f : 0.0f);
  if (column->expands)
    {
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_label_set_lines (GTK_LABEL (label), 2);
      gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
    }
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const Column *column)
{
  GtkLabel *label = GTK_LABEL (gtk_list_item_get_child (item));
  BsCuttingTable *self
      = BS_CUTTING_TABLE (gtk_widget_get_ancestor (GTK_WIDGET (label), BS_TYPE_CUTTING_TABLE));
  const char *row
      = gtk_string_object_get_string (GTK_STRING_OBJECT (gtk_list_item_get_item (item)));
  gint64 index = g_ascii_strtoll (row, NULL, 10);
  const BsCut *cut = index >= 0 ? &g_array_index (self->plan->cuts, BsCut, index) : NULL;
  const BsSawWish *wish = index < 0 ? &g_array_index (self->wishes, BsSawWish, -index - 1) : NULL;
  g_autofree char *text = column->tell (self->plan, cut, wish);

  gtk_label_set_text (label, text);
  if (column->expands)
    gtk_widget_set_tooltip_text (GTK_WIDGET (label), text);
  if (wish != NULL && !column->expands)
    gtk_widget_add_css_class (GTK_WIDGET (label), "strong");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (label), "strong");
}

/* The rows. */

static int
compare_cuts (gconstpointer a, gconstpointer b, gpointer plan)
{
  const BsCut *left = &g_array_index (((const BsPlan *)plan)->cuts, BsCut, *(const guint *)a);
  const BsCut *right = &g_array_index (((const BsPlan *)plan)->cuts, BsCut, *(const guint *)b);

  if (left->y < right->y || left->y > right->y)
    return left->y < right->y ? -1 : 1;
  return (left->x > right->x) - (left->x < right->x);
}

static void
add_row (GPtrArray *rows, gint64 index)
{
  g_ptr_array_add (rows, g_strdup_printf ("%" G_GINT64_FORMAT, index));
}

static void
add_cuts (GPtrArray *rows, const BsPlan *plan)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);

  for (guint i = 0; i < rack->boards->len; i++)
    {
      GArray *cuts = ((const BsSawnBoard *)rack->boards->pdata[i])->cuts;

      g_array_sort_with_data (cuts, compare_cuts, (gpointer)plan);
      for (guint k = 0; k < cuts->len; k++)
        add_row (rows, g_array_index (cuts, guint, k));
    }
}

static GPtrArray *
list_rows (BsCuttingTable *self)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < self->wishes->len; i++)
    if (bs_saw_count_missing (self->plan, &g_array_index (self->wishes, BsSawWish, i)) > 0)
      add_row (rows, -(gint64)i - 1);
  add_cuts (rows, self->plan);
  g_ptr_array_add (rows, NULL);
  return rows;
}

/* A preview changes nothing here. Nothing is selected then: places in the plan are others. */
static void
changed_cb (BsCuttingTable *self)
{
  g_assert (BS_IS_CUTTING_TABLE (self));

  BsPlan *plan = bs_session_get_plan (self->session);
  if (plan == self->plan)
    return;
  BsPlan *before = self->plan;
  self->plan = bs_plan_ref (plan);
  g_clear_pointer (&self->wishes, g_array_unref);
  self->wishes = bs_saw_wishes_new (plan);
  g_autoptr (GPtrArray) rows = list_rows (self);
  gtk_string_list_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)),
                          (const char *const *)rows->pdata);
  g_clear_pointer (&before, bs_plan_unref);
}

static void
selected_cb (BsCuttingTable *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTED]);
}

static void
bs_cutting_table_dispose (GObject *object)
{
  BsCuttingTable *self = BS_CUTTING_TABLE (object);

  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  g_clear_object (&self->selection);
  g_clear_object (&self->rows);
  g_clear_object (&self->session);
  g_clear_pointer (&self->plan, bs_plan_unref);
  g_clear_pointer (&self->wishes, g_array_unref);
  G_OBJECT_CLASS (bs_cutting_table_parent_class)->dispose (object);
}

static void
bs_cutting_table_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_SELECTED:
      g_value_set_int (value, bs_cutting_table_get_selected (BS_CUTTING_TABLE (object)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_cutting_table_class_init (BsCuttingTableClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = bs_cutting_table_dispose;
  object_class->get_property = bs_cutting_table_get_property;

  props[PROP_SELECTED] = g_param_spec_int ("selected", NULL, NULL, -1, G_MAXINT, -1,
                                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
view_new (BsCuttingTable *self)
{
  GtkWidget *view = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));

  gtk_widget_add_css_class (view, "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Pieces to cut"), -1);
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column
          = gtk_column_view_column_new (_ (columns[i].title), factory);

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), (gpointer)&columns[i]);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), (gpointer)&columns[i]);
      gtk_column_view_column_set_expand (column, columns[i].expands);
      gtk_column_view_append_column (GTK_COLUMN_VIEW (view), column);
    }
  return view;
}

static void
bs_cutting_table_init (BsCuttingTable *self)
{
  self->rows = gtk_string_list_new (NULL);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->rows)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  g_signal_connect_object (self->selection, "notify::selected", G_CALLBACK (selected_cb), self,
                           G_CONNECT_SWAPPED);
  self->scroller = gtk_scrolled_window_new ();
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
}

GtkWidget *
bs_cutting_table_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsCuttingTable *self = g_object_new (BS_TYPE_CUTTING_TABLE, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), view_new (self));
  changed_cb (self);
  return GTK_WIDGET (self);
}

int
bs_cutting_table_get_selected (BsCuttingTable *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_TABLE (self), -1);

  GtkStringObject *row = gtk_single_selection_get_selected_item (self->selection);
  gint64 index = row != NULL ? g_ascii_strtoll (gtk_string_object_get_string (row), NULL, 10) : -1;
  return index >= 0 ? (int)index : -1;
}

void
bs_cutting_table_select (BsCuttingTable *self, int cut)
{
  g_return_if_fail (BS_IS_CUTTING_TABLE (self));

  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->rows)), found = GTK_INVALID_LIST_POSITION;
  for (guint i = 0; i < n && cut >= 0; i++)
    if (g_ascii_strtoll (gtk_string_list_get_string (self->rows, i), NULL, 10) == cut)
      found = i;
  gtk_single_selection_set_selected (self->selection, found);
}
