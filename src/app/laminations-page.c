/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/laminations-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/focus-order.h"
#include "app/form.h"
#include "app/lamination-fields.h"
#include "app/page.h"
#include "app/photos.h"
#include "core/slab-wish.h"
#include "core/text.h"
#include "core/units.h"
#include "draw/picture.h"
#include "draw/wide-faces.h"
#include "plan/edits.h"
#include "words/sawing.h"

struct _BsLaminationsPage
{
  GtkWidget parent_instance;

  /* children */
  GtkStack *rows;     /* the table, or a hint while there are none */
  GtkWidget *table;   /* GtkColumnView */
  GtkWidget *details; /* GtkBox, of the selected lamination */
  GtkWidget *picture; /* GtkDrawingArea in the details */
  GtkWidget *origin;  /* in the details: which board it is cut from */
  GtkWidget *faces;   /* GtkDrawingArea in the details: its wide faces, when they have photos */
  GtkWidget *take_off;
  GtkWidget *make; /* while there are none */

  /* owned */
  BsSession *session;
  GtkStringList *ids;
  GtkSingleSelection *selection;
};

G_DEFINE_FINAL_TYPE (BsLaminationsPage, bs_laminations_page, GTK_TYPE_WIDGET)

/* The rows: ids in the order of the slab, then of the rack. */

static GPtrArray *
list_ids (const BsPlan *plan)
{
  GPtrArray *ids = g_ptr_array_new ();

  for (guint i = 0; i < plan->order->len; i++)
    g_ptr_array_add (ids, g_array_index (plan->order, BsPlacement, i).lamination);
  for (guint i = 0; i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = g_ptr_array_index (plan->laminations, i);
      if (bs_plan_find_place (plan, lamination->id) < 0)
        g_ptr_array_add (ids, lamination->id);
    }
  g_ptr_array_add (ids, NULL);
  return ids;
}

static gboolean
shows_ids (BsLaminationsPage *self, const GPtrArray *ids)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->ids));
  if (n != ids->len - 1)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!g_str_equal (gtk_string_list_get_string (self->ids, i), g_ptr_array_index (ids, i)))
      return FALSE;
  return TRUE;
}

static const char *
get_row_id (GtkListItem *item)
{
  return gtk_string_object_get_string (GTK_STRING_OBJECT (gtk_list_item_get_item (item)));
}

/* The columns. */

static void
show_place (GtkListItem *item, BsSession *session)
{
  GtkLabel *label = GTK_LABEL (gtk_list_item_get_child (item));
  int place = bs_plan_find_place (bs_session_get_plan (session), get_row_id (item));
  g_autofree char *text = place >= 0 ? g_strdup_printf ("%d", place + 1) : g_strdup (_ ("rack"));
  gtk_label_set_text (label, text);
}

static void
setup_place_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 1.0f);
  gtk_widget_add_css_class (label, "faint");
  gtk_list_item_set_child (item, label);
}

static void
bind_place_cb (GtkSignalListItemFactory *factory, GtkListItem *item, BsSession *session)
{
  show_place (item, session);
}

typedef struct
{
  BsSession *session; /* borrowed: the page that owns the column holds it */
  const BsField *field;
} Column;

/* Typing in a row is about its lamination. */
static void
focus_enter_cb (GtkEventControllerFocus *focus, GtkListItem *item)
{
  gtk_widget_activate_action (gtk_list_item_get_child (item), "list.select-item", "(ubb)",
                              gtk_list_item_get_position (item), FALSE, FALSE);
}

static void
setup_field_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Column *column)
{
  GtkWidget *editor
      = bs_field_editor_new (column->session, &bs_record_lamination, column->field, NULL);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_object (focus, "enter", G_CALLBACK (focus_enter_cb), item, 0);
  gtk_widget_add_controller (editor, focus);
  gtk_list_item_set_child (item, editor);
}

static void
bind_field_cb (GtkSignalListItemFactory *factory, GtkListItem *item, Column *column)
{
  bs_field_editor_set_id (BS_FIELD_EDITOR (gtk_list_item_get_child (item)), get_row_id (item));
}

static void
free_column (gpointer data, GClosure *closure)
{
  g_free (data);
}

static void
append_column (BsLaminationsPage *self, const char *title, GtkListItemFactory *factory)
{
  g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (title, factory);
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->table), column);
}

/* "Bow, mm": the unit stands once over its column. */
static void
show_titles (BsLaminationsPage *self)
{
  BsUnitSystem units = bs_session_get_plan (self->session)->units;
  GListModel *columns = gtk_column_view_get_columns (GTK_COLUMN_VIEW (self->table));

  for (guint i = 0; i < bs_n_lamination_columns; i++)
    {
      const BsField *field = &bs_lamination_columns[i];
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i + 1);
      g_autofree char *title = NULL;
      if (field->kind == BS_FIELD_NUMBER)
        /* Translators: a column's title: what is measured, its unit */
        title = g_strdup_printf (_ ("%s, %s"), _ (field->label),
                                 bs_units_symbol (field->limit->quantity, units));
      else
        title = g_strdup (_ (field->label));
      gtk_column_view_column_set_title (column, title);
    }
}

static void
append_columns (BsLaminationsPage *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_place_cb), NULL);
  g_signal_connect_object (factory, "bind", G_CALLBACK (bind_place_cb), self->session, 0);
  append_column (self, _ ("Place"), factory);

  for (guint i = 0; i < bs_n_lamination_columns; i++)
    {
      Column *column = g_new (Column, 1);
      *column = (Column){ self->session, &bs_lamination_columns[i] };
      factory = gtk_signal_list_item_factory_new ();
      g_signal_connect_data (factory, "setup", G_CALLBACK (setup_field_cb), column, free_column, 0);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_field_cb), column);
      append_column (self, NULL, factory);
    }
  show_titles (self);
}

/* The selected lamination. */

static const BsLamination *
find_selected (BsLaminationsPage *self)
{
  const char *selected = bs_session_get_selected (self->session);

  return selected != NULL ? bs_plan_find_lamination (bs_session_get_plan (self->session), selected)
                          : NULL;
}

static void
draw_picture_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  BsLaminationsPage *self = data;
  const BsLamination *lamination = find_selected (self);

  if (lamination == NULL)
    return;

  BsPlacement as_marked = { .lamination = lamination->id };
  BsPlaced placed = bs_placed_new (bs_session_get_plan (self->session), &as_marked, 0.0);
  double per_mm = MIN ((width - 12.0) / placed.thickness, (height - 12.0) / placed.height_left);
  BsScale scale
      = { .per_mm_across = per_mm, .per_mm_along = per_mm, .hairline = 1.0, .text_size = 12.0 };
  cairo_translate (cr, (width - per_mm * placed.thickness) / 2.0,
                   height - (height - per_mm * placed.height_left) / 2.0);
  bs_draw_end (cr, &placed, &scale, bs_appearance_find_palette (GTK_WIDGET (area)), BS_MARK_NONE);
}

/* FALSE when neither face has a photo. */
static gboolean
find_photos (BsLaminationsPage *self, const BsLamination *lamination,
             BsFacePhoto photos[BS_N_WIDE_FACES])
{
  const BsPlan *plan = bs_session_get_plan (self->session);

  for (int i = 0; i < BS_N_WIDE_FACES; i++)
    {
      photos[i] = bs_photo_find (plan, lamination, bs_wide_face (plan->slab.layup, i));
      photos[i].surface = bs_photos_get (bs_photos_get_shared (self->session), photos[i].path);
    }
  return photos[0].path != NULL || photos[1].path != NULL;
}

static void
draw_faces_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  BsLaminationsPage *self = data;
  const BsLamination *lamination = find_selected (self);
  BsFacePhoto photos[BS_N_WIDE_FACES];

  if (lamination == NULL || !find_photos (self, lamination, photos))
    return;
  bs_draw_wide_faces (cr, bs_session_get_plan (self->session), lamination, photos, width, height,
                      bs_appearance_find_palette (GTK_WIDGET (area)));
}

static void
show_faces (BsLaminationsPage *self)
{
  const BsLamination *lamination = find_selected (self);
  BsFacePhoto photos[BS_N_WIDE_FACES];

  if (self->faces == NULL)
    return;
  gtk_widget_set_visible (self->faces,
                          lamination != NULL && find_photos (self, lamination, photos));
  gtk_widget_queue_draw (self->faces);
}

static GtkWidget *
faces_new (BsLaminationsPage *self)
{
  GtkWidget *area = gtk_drawing_area_new ();

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area), 560);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area), 96);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_faces_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Its wide faces on the photos of its board"), -1);
  g_signal_connect_object (bs_photos_get_shared (self->session), "changed",
                           G_CALLBACK (gtk_widget_queue_draw), area, G_CONNECT_SWAPPED);
  return area;
}

static void
show_origin (BsLaminationsPage *self)
{
  const BsLamination *lamination = find_selected (self);

  if (self->origin == NULL || lamination == NULL)
    return;
  g_autofree char *text = bs_words_origin (bs_session_get_plan (self->session), lamination);
  gtk_label_set_text (GTK_LABEL (self->origin), text != NULL ? text : "");
  gtk_widget_set_visible (self->origin, text != NULL);
}

static void
show_details (BsLaminationsPage *self)
{
  const char *selected = bs_session_get_selected (self->session);
  GtkWidget *child;

  self->picture = self->origin = self->faces = NULL;
  while ((child = gtk_widget_get_first_child (self->details)) != NULL)
    gtk_box_remove (GTK_BOX (self->details), child);
  gtk_widget_set_visible (self->details, selected != NULL);
  gtk_widget_set_sensitive (self->take_off, selected != NULL);
  if (selected == NULL)
    return;

  self->picture = gtk_drawing_area_new ();
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self->picture), 108);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->picture), 156);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->picture), draw_picture_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("End grain as marked, with the show face up"), -1);
  gtk_widget_set_valign (self->picture, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (self->details), self->picture);

  GtkWidget *measures = bs_form_new (self->session, NULL, &bs_record_lamination, selected,
                                     bs_lamination_details, bs_n_lamination_details);
  gtk_widget_set_halign (measures, GTK_ALIGN_START);

  /* Under one another: a defect's fields take the whole width. */
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  self->origin = bs_page_text_new (NULL, NULL);
  show_origin (self);
  gtk_box_append (GTK_BOX (column), self->origin);
  self->faces = faces_new (self);
  show_faces (self);
  gtk_box_append (GTK_BOX (column), self->faces);
  gtk_box_append (GTK_BOX (column),
                  bs_rows_editor_new (self->session, &bs_lamination_defects, selected));
  gtk_box_append (GTK_BOX (column), measures);
  gtk_box_append (GTK_BOX (self->details), column);
}

/* Follows the session. */

static void
show_selected (BsLaminationsPage *self)
{
  const char *selected = bs_session_get_selected (self->session);
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->ids));
  guint row = GTK_INVALID_LIST_POSITION;

  for (guint i = 0; selected != NULL && i < n && row == GTK_INVALID_LIST_POSITION; i++)
    if (g_str_equal (gtk_string_list_get_string (self->ids, i), selected))
      row = i;
  gtk_single_selection_set_selected (self->selection, row);
}

static void
selected_cb (BsLaminationsPage *self, GParamSpec *pspec, BsSession *session)
{
  show_selected (self);
  show_details (self);
}

static void
row_selected_cb (BsLaminationsPage *self, GParamSpec *pspec, GtkSingleSelection *selection)
{
  GtkStringObject *row = gtk_single_selection_get_selected_item (selection);
  if (row != NULL)
    bs_session_select (self->session, gtk_string_object_get_string (row));
}

/* The pushed plan is shown; a preview changes no measure. */
static void
session_changed_cb (BsLaminationsPage *self, BsSession *session)
{
  g_assert (BS_IS_LAMINATIONS_PAGE (self));
  g_assert (BS_IS_SESSION (session));

  if (self->picture != NULL)
    gtk_widget_queue_draw (self->picture);
  show_origin (self);
  show_faces (self);
  show_titles (self);
  const gboolean is_empty = bs_session_get_plan (session)->laminations->len == 0;
  gtk_widget_set_visible (self->make, is_empty);
  gtk_stack_set_visible_child_name (self->rows, is_empty ? "hint" : "table");
  g_autoptr (GPtrArray) ids = list_ids (bs_session_get_plan (session));
  if (shows_ids (self, ids))
    return;
  gtk_string_list_splice (self->ids, 0, g_list_model_get_n_items (G_LIST_MODEL (self->ids)),
                          (const char *const *)ids->pdata);
  show_selected (self);
}

/* Buttons. */

/* The next one measures like the last one: most laminations of a slab are alike. */
static void
add_cb (BsLaminationsPage *self, GtkButton *button)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  g_autofree char *id = bs_record_make_id (plan->laminations, "lamination");
  g_autofree char *label = g_strdup_printf ("%u", plan->laminations->len + 1);
  g_autoptr (BsLamination) lamination = NULL;

  if (plan->laminations->len > 0)
    {
      lamination
          = bs_lamination_copy (g_ptr_array_index (plan->laminations, plan->laminations->len - 1));
      g_array_set_size (lamination->defects, 0);
    }
  else
    {
      lamination = bs_lamination_new (id);
      lamination->length = plan->slab.length;
      lamination->thickness = 40.0;
      lamination->height = plan->slab.thickness + 5.0;
      if (plan->woods->len > 0)
        bs_text_set (&lamination->wood, ((BsWood *)g_ptr_array_index (plan->woods, 0))->id);
    }
  bs_text_set (&lamination->id, id);
  bs_text_set (&lamination->label, label);

  g_autoptr (BsPlan) with_it = bs_edit_put_lamination (plan, lamination);
  g_autoptr (BsPlan) in_slab = bs_edit_bring_back (with_it, id, (int)with_it->order->len);
  bs_session_push (self->session, in_slab, _ ("Add a lamination"), NULL);
  bs_session_select (self->session, id);
}

static void
take_off_cb (BsLaminationsPage *self, GtkButton *button)
{
  g_autofree char *id = g_strdup (bs_session_get_selected (self->session));
  if (id == NULL)
    return;
  g_autoptr (BsPlan) without = bs_edit_remove_lamination (bs_session_get_plan (self->session), id);
  bs_session_push (self->session, without, _ ("Strike out a lamination"), NULL);
}

static void
make_cb (BsLaminationsPage *self, GtkButton *button)
{
  g_autoptr (BsPlan) made = bs_slab_wish_make_laminations (bs_session_get_plan (self->session));
  bs_session_push (self->session, made, _ ("Make the laminations"), NULL);
}

static GtkWidget *
new_buttons (BsLaminationsPage *self)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *add = gtk_button_new_with_mnemonic (_ ("_Add a lamination"));

  self->take_off = gtk_button_new_with_mnemonic (_ ("Strike it _out"));
  gtk_widget_set_tooltip_text (
      self->take_off, _ ("Removes the selected lamination from the plan, not only from the slab"));
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (add_cb), self);
  g_signal_connect_swapped (self->take_off, "clicked", G_CALLBACK (take_off_cb), self);
  gtk_box_append (GTK_BOX (buttons), add);
  gtk_box_append (GTK_BOX (buttons), self->take_off);
  self->make = gtk_button_new_with_label (_ ("Make the laminations for this slab"));
  gtk_widget_set_tooltip_text (self->make, _ ("As many as its width takes, in the size that is "
                                              "asked for at Buying"));
  g_signal_connect_swapped (self->make, "clicked", G_CALLBACK (make_cb), self);
  gtk_box_append (GTK_BOX (buttons), self->make);
  gtk_widget_add_css_class (buttons, "page-buttons");
  return buttons;
}

static void
bs_laminations_page_dispose (GObject *object)
{
  BsLaminationsPage *self = BS_LAMINATIONS_PAGE (object);
  GtkWidget *child;

  self->picture = self->origin = self->faces = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->selection);
  g_clear_object (&self->ids);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_laminations_page_parent_class)->dispose (object);
}

static void
bs_laminations_page_class_init (BsLaminationsPageClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_laminations_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
bs_laminations_page_init (BsLaminationsPage *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->ids = gtk_string_list_new (NULL);
}

static GtkWidget *
new_hint (void)
{
  GtkWidget *hint = bs_form_note_new (_ (
      "No laminations yet. Make them for this slab, all of one size, with the button below; type "
      "them one by one; or plan the cuts of your boards at “Cutting” and lay them out."));

  gtk_label_set_width_chars (GTK_LABEL (hint), 40);
  gtk_widget_set_halign (hint, GTK_ALIGN_CENTER);
  return hint;
}

static void
build (BsLaminationsPage *self)
{
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->ids)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  self->table = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  gtk_widget_add_css_class (self->table, "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->table), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  C_ ("place", "Laminations"), -1);
  bs_focus_back_through_cells (self->table);
  append_columns (self);

  GtkWidget *scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->table);
  gtk_widget_set_vexpand (scroller, TRUE);
  self->rows = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (self->rows, scroller, "table");
  gtk_stack_add_named (self->rows, new_hint (), "hint");

  self->details = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  gtk_widget_add_css_class (self->details, "page");
  GtkWidget *detail_scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (detail_scroller), GTK_POLICY_AUTOMATIC,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (detail_scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (detail_scroller), 240);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (detail_scroller), self->details);

  gtk_widget_set_parent (GTK_WIDGET (self->rows), GTK_WIDGET (self));
  gtk_widget_set_parent (new_buttons (self), GTK_WIDGET (self));
  gtk_widget_set_parent (detail_scroller, GTK_WIDGET (self));
}

GtkWidget *
bs_laminations_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsLaminationsPage *self = g_object_new (BS_TYPE_LAMINATIONS_PAGE, NULL);
  self->session = g_object_ref (session);
  build (self);
  session_changed_cb (self, session);
  show_details (self);
  g_signal_connect_object (self->selection, "notify::selected", G_CALLBACK (row_selected_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (selected_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
