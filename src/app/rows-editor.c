/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rows-editor.h"

#include <glib/gi18n.h>

#include "core/units.h"

/* So that it stands in the middle of the entries beside it, px. */
#define SWITCH_LOWER 3

struct _BsRowsEditor
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *heading;
  GtkWidget *grid;
  GtkWidget *none;
  GtkWidget *add;

  /* owned */
  BsSession *session;
  char *owner;
  GPtrArray *ids;       /* char *: of the rows that are shown */
  GPtrArray *take_offs; /* GtkButton of each row, borrowed from it */
  GPtrArray *widths;    /* GtkSizeGroup of each field: as wide in one thing as in the others */
  BsUnitSystem units;   /* in the titles */

  /* borrowed */
  const BsRows *rows;
};

G_DEFINE_FINAL_TYPE (BsRowsEditor, bs_rows_editor, GTK_TYPE_WIDGET)

static void
push (BsRowsEditor *self, BsPlan *plan, const char *label)
{
  g_autoptr (BsPlan) owned = plan;
  bs_session_push (self->session, owned, label, NULL);
}

/* Things in an array of their owner. */

static GArray *
get_array (const BsRows *rows, gconstpointer owner)
{
  return *(GArray *const *)((const char *)owner + rows->array);
}

static BsPlan *
append (const BsRows *rows, const BsPlan *plan, const char *id)
{
  BsPlan *copy = bs_plan_copy (plan);
  gpointer owner = rows->owners->edit (copy, id);
  GArray *things = get_array (rows, owner);
  g_autofree gpointer thing = g_malloc0 (g_array_get_element_size (things));

  rows->begin (owner, thing);
  g_array_append_vals (things, thing, 1);
  return copy;
}

static BsPlan *
take_out (const BsRows *rows, const BsPlan *plan, const char *id, guint index)
{
  BsPlan *copy = bs_plan_copy (plan);

  g_array_remove_index (get_array (rows, rows->owners->edit (copy, id)), index);
  return copy;
}

static guint
count_things (BsRowsEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);

  if (self->rows->owners == NULL)
    return self->rows->count (plan, self->owner);
  gconstpointer owner = self->rows->owners->find (plan, self->owner);
  return owner != NULL ? get_array (self->rows, owner)->len : 0;
}

static void
add_cb (BsRowsEditor *self, GtkButton *button)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  BsPlan *with_it = self->rows->owners != NULL ? append (self->rows, plan, self->owner)
                                               : self->rows->add (plan, self->owner);

  push (self, with_it, _ (self->rows->add_label));
}

static void
take_off_cb (GtkButton *button, BsRowsEditor *self)
{
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "index"));
  const BsPlan *plan = bs_session_get_plan (self->session);
  BsPlan *without = self->rows->owners != NULL ? take_out (self->rows, plan, self->owner, index)
                                               : self->rows->take_off (plan, self->owner, index);

  /* The button goes with its row; the next one, or the last, has the focus then. */
  push (self, without, _ ("Take off a row"));
  guint n = self->ids->len;
  gtk_widget_grab_focus (n > 0 ? self->take_offs->pdata[MIN (index, n - 1)] : self->add);
}

/* "Length, mm" where the fields themselves show no unit. */
static char *
make_title (BsRowsEditor *self, const BsField *field)
{
  const BsPlan *plan = bs_session_get_plan (self->session);

  if (!field->without_unit)
    return g_strdup (_ (field->label));
  const char *unit = field->kind == BS_FIELD_MONEY
                         ? plan->currency
                         : bs_units_symbol (field->limit->quantity, plan->units);
  /* Translators: a column's title: what is measured, its unit */
  return g_strdup_printf (_ ("%s, %s"), _ (field->label), unit);
}

static gboolean
is_left (const BsField *field)
{
  return field->kind != BS_FIELD_NUMBER && field->kind != BS_FIELD_WHOLE
         && field->kind != BS_FIELD_MONEY;
}

static GtkWidget *
title_new (const char *text, const char *hint, gboolean is_at_left)
{
  GtkWidget *title = gtk_label_new (text);

  gtk_widget_add_css_class (title, "faint");
  gtk_label_set_xalign (GTK_LABEL (title), is_at_left ? 0.0f : 1.0f);
  gtk_widget_set_tooltip_text (title, hint);
  return title;
}

static GtkWidget *
title_of_field (BsRowsEditor *self, const BsField *field)
{
  g_autofree char *text = make_title (self, field);

  return title_new (text, field->hint != NULL ? _ (field->hint) : NULL, is_left (field));
}

static void
attach_titles (BsRowsEditor *self)
{
  const BsRows *rows = self->rows;

  for (guint i = 0; i < rows->n_fields; i++)
    gtk_grid_attach (GTK_GRID (self->grid), title_of_field (self, &rows->fields[i]), (int)i, 0, 1,
                     1);
  for (guint i = 0; i < rows->n_columns; i++)
    gtk_grid_attach (GTK_GRID (self->grid), title_new (_ (rows->columns[i].title), NULL, TRUE),
                     (int)(rows->n_fields + i), 0, 1, 1);
}

static GtkWidget *
new_take_off_button (BsRowsEditor *self, guint index)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_add_css_class (button, "take-off");
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (button, _ ("Take off"));
  /* Translators: %u is the number of a row in a table */
  g_autofree char *name = g_strdup_printf (_ ("Take off row %u"), index + 1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (index));
  g_signal_connect (button, "clicked", G_CALLBACK (take_off_cb), self);
  g_ptr_array_add (self->take_offs, button);
  return button;
}

/* Lines of the grid that belong to one thing: its one or two rows of fields, and one for each field
 * that may have something wrong, which take no room while nothing is. */
static int
count_lines (BsRowsEditor *self)
{
  return 2 + (int)self->rows->n_fields;
}

static int
count_columns (BsRowsEditor *self)
{
  return (int)(self->rows->n_fields + self->rows->n_columns) + 1;
}

static GtkWidget *
new_editor (BsRowsEditor *self, guint index, guint field)
{
  GtkWidget *editor = bs_field_editor_new (self->session, self->rows->record,
                                           &self->rows->fields[field], self->ids->pdata[index]);
  int row = 1 + (int)index * count_lines (self);

  gtk_widget_set_hexpand (editor, self->rows->fields[field].kind == BS_FIELD_TEXT);
  if (self->rows->fields[field].kind == BS_FIELD_SWITCH)
    gtk_widget_set_margin_top (editor, SWITCH_LOWER);
  gtk_grid_attach (GTK_GRID (self->grid), bs_field_editor_give_problem (BS_FIELD_EDITOR (editor)),
                   0, row + 2 + (int)field, count_columns (self), 1);
  return editor;
}

/* Fields side by side, each under its title. */
static GtkWidget *
line_new (BsRowsEditor *self, guint index, guint first, guint end)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  for (guint i = first; i < end; i++)
    {
      BsFieldKind kind = self->rows->fields[i].kind;
      GtkWidget *field = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

      gtk_box_append (GTK_BOX (field), title_of_field (self, &self->rows->fields[i]));
      gtk_box_append (GTK_BOX (field), new_editor (self, index, i));
      gtk_widget_set_hexpand (field, kind == BS_FIELD_TEXT || kind == BS_FIELD_OWN);
      gtk_size_group_add_widget (self->widths->pdata[i], field);
      gtk_box_append (GTK_BOX (line), field);
    }
  return line;
}

/* A thing in two lines. */
static void
attach_lines (BsRowsEditor *self, guint index)
{
  guint n = self->rows->n_first;
  int row = 1 + (int)index * count_lines (self);
  GtkWidget *first = line_new (self, index, 0, n);
  GtkWidget *second = line_new (self, index, n, self->rows->n_fields);
  GtkWidget *take_off = new_take_off_button (self, index);

  gtk_widget_set_valign (take_off, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (first), take_off);
  if (index > 0)
    gtk_widget_set_margin_top (first, 12);
  gtk_grid_attach (GTK_GRID (self->grid), first, 0, row, count_columns (self), 1);
  gtk_grid_attach (GTK_GRID (self->grid), second, 0, row + 1, count_columns (self), 1);
}

static void
attach_row (BsRowsEditor *self, guint index)
{
  const char *id = g_ptr_array_index (self->ids, index);
  int row = 1 + (int)index * count_lines (self);

  for (guint i = 0; i < self->rows->n_fields; i++)
    gtk_grid_attach (GTK_GRID (self->grid), new_editor (self, index, i), (int)i, row, 1, 1);
  for (guint i = 0; i < self->rows->n_columns; i++)
    gtk_grid_attach (GTK_GRID (self->grid), self->rows->columns[i].create (self->session, id),
                     (int)(self->rows->n_fields + i), row, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), new_take_off_button (self, index),
                   count_columns (self) - 1, row, 1, 1);
}

static GPtrArray *
list_ids (BsRowsEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  guint n = count_things (self);
  GPtrArray *ids = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (ids, self->rows->dup_id (plan, self->owner, i));
  return ids;
}

static gboolean
are_same (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!g_str_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;
  return TRUE;
}

/* The editors follow their own records; only other rows need other editors. */
static void
show_rows (BsRowsEditor *self)
{
  g_autoptr (GPtrArray) ids = list_ids (self);
  BsUnitSystem units = bs_session_get_plan (self->session)->units;
  GtkWidget *child;

  if (self->ids != NULL && are_same (ids, self->ids) && units == self->units)
    return;
  self->units = units;
  g_clear_pointer (&self->ids, g_ptr_array_unref);
  self->ids = g_steal_pointer (&ids);

  while ((child = gtk_widget_get_first_child (self->grid)) != NULL)
    gtk_grid_remove (GTK_GRID (self->grid), child);
  g_ptr_array_set_size (self->take_offs, 0);
  gtk_widget_set_visible (self->grid, self->ids->len > 0);
  gtk_widget_set_visible (self->none, self->ids->len == 0);
  if (self->ids->len > 0 && self->rows->n_first == 0)
    attach_titles (self);
  for (guint i = 0; i < self->ids->len; i++)
    if (self->rows->n_first > 0)
      attach_lines (self, i);
    else
      attach_row (self, i);
}

static void
session_changed_cb (BsRowsEditor *self, BsSession *session)
{
  g_assert (BS_IS_ROWS_EDITOR (self));
  g_assert (BS_IS_SESSION (session));

  show_rows (self);
}

static void
bs_rows_editor_dispose (GObject *object)
{
  BsRowsEditor *self = BS_ROWS_EDITOR (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_rows_editor_parent_class)->dispose (object);
}

static void
bs_rows_editor_finalize (GObject *object)
{
  BsRowsEditor *self = BS_ROWS_EDITOR (object);

  g_clear_pointer (&self->owner, g_free);
  g_clear_pointer (&self->ids, g_ptr_array_unref);
  g_clear_pointer (&self->take_offs, g_ptr_array_unref);
  g_clear_pointer (&self->widths, g_ptr_array_unref);
  G_OBJECT_CLASS (bs_rows_editor_parent_class)->finalize (object);
}

static void
bs_rows_editor_class_init (BsRowsEditorClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = bs_rows_editor_dispose;
  object_class->finalize = bs_rows_editor_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
bs_rows_editor_init (BsRowsEditor *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);

  self->heading = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->heading, "strong");
  gtk_label_set_xalign (GTK_LABEL (self->heading), 0.0f);

  self->grid = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 6);

  self->none = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->none, "faint");
  gtk_label_set_xalign (GTK_LABEL (self->none), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (self->none), TRUE);

  self->add = gtk_button_new ();
  gtk_widget_set_halign (self->add, GTK_ALIGN_START);
  g_signal_connect_swapped (self->add, "clicked", G_CALLBACK (add_cb), self);

  gtk_widget_set_parent (self->heading, GTK_WIDGET (self));
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  gtk_widget_set_parent (self->none, GTK_WIDGET (self));
  gtk_widget_set_parent (self->add, GTK_WIDGET (self));
}

GtkWidget *
bs_rows_editor_new (BsSession *session, const BsRows *rows, const char *owner)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsRowsEditor *self = g_object_new (BS_TYPE_ROWS_EDITOR, NULL);
  self->session = g_object_ref (session);
  self->rows = rows;
  self->take_offs = g_ptr_array_new ();
  self->widths = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < rows->n_fields; i++)
    g_ptr_array_add (self->widths, gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL));
  gtk_label_set_text (GTK_LABEL (self->heading), _ (rows->heading));
  gtk_label_set_text (GTK_LABEL (self->none), _ (rows->none));
  gtk_button_set_label (GTK_BUTTON (self->add), _ (rows->add_label));
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed_cb), self,
                           G_CONNECT_SWAPPED);
  bs_rows_editor_set_owner (self, owner);
  return GTK_WIDGET (self);
}

void
bs_rows_editor_set_owner (BsRowsEditor *self, const char *owner)
{
  g_return_if_fail (BS_IS_ROWS_EDITOR (self));

  g_autofree char *old = self->owner;
  self->owner = g_strdup (owner);
  show_rows (self);
}
