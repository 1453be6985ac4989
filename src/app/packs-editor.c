/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/packs-editor.h"

#include <glib/gi18n.h>

#include "app/blocks.h"
#include "app/drop-down.h"
#include "core/packs.h"
#include "plan/edits.h"

struct _BsPacksEditor
{
  GtkWidget parent_instance;

  BsSession *session;
  char *shown; /* the labels and packs shown, so that nothing is built anew in vain */
  GtkWidget *column;
  /* borrowed from the column */
  BsBlocks *packs;
  GtkLabel *none;
  GtkBox *maker;
  GtkDropDown *first;
  GtkSpinButton *count;
};

G_DEFINE_FINAL_TYPE (BsPacksEditor, bs_packs_editor, GTK_TYPE_WIDGET)

static const char *
get_label (const BsPlan *plan, int place)
{
  const char *id = g_array_index (plan->order, BsPlacement, place).lamination;
  const BsLamination *lamination = bs_plan_find_lamination (plan, id);

  return lamination->label != NULL ? lamination->label : id;
}

static char *
name_pack (const BsPlan *plan, const BsPack *pack)
{
  /* Translators: the labels of the first and the last lamination of a pack. */
  return g_strdup_printf (C_ ("laminations", "%s to %s"), get_label (plan, pack->first),
                          get_label (plan, pack->first + pack->count - 1));
}

static void
push_packs (BsPacksEditor *self, const GArray *packs, const char *label)
{
  g_autoptr (BsPlan) edited = bs_edit_set_packs (
      bs_session_get_plan (self->session), (const BsPack *)(const void *)packs->data, packs->len);

  bs_session_push (self->session, edited, label, NULL);
}

/* With those that lie apart from it or nest with it: others cannot stay. */
static void
make_cb (BsPacksEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  const BsPack pack = { .first = (int)gtk_drop_down_get_selected (self->first),
                        .count = gtk_spin_button_get_value_as_int (self->count) };

  if (pack.first + pack.count > (int)plan->order->len)
    return;
  g_autoptr (GArray) packs = g_array_new (FALSE, FALSE, sizeof (BsPack));
  g_autofree char *name = name_pack (plan, &pack);
  /* Translators: "A1 to A6". */
  g_autofree char *label = g_strdup_printf (_ ("Make a pack of %s"), name);

  for (guint i = 0; i < plan->packs->len; i++)
    {
      const BsPack *present = &g_array_index (plan->packs, BsPack, i);

      if (bs_packs_fit (present, &pack))
        g_array_append_val (packs, *present);
    }
  g_array_append_val (packs, pack);
  g_array_sort (packs, bs_packs_compare);
  push_packs (self, packs, label);
}

/* Packs within it stay. */
static void
take_apart_cb (GtkWidget *button, BsPacksEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  guint number = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "bs-number"));
  g_autoptr (GArray) packs = g_array_new (FALSE, FALSE, sizeof (BsPack));

  g_array_append_vals (packs, plan->packs->data, plan->packs->len);
  g_array_remove_index (packs, number);
  gtk_widget_grab_focus (GTK_WIDGET (self->first)); /* the button goes away */
  push_packs (self, packs, _ ("Take a pack apart"));
}

static void
limit_count_cb (BsPacksEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  int first = (int)gtk_drop_down_get_selected (self->first);

  gtk_spin_button_set_range (self->count, 2.0, MAX (2.0, (int)plan->order->len - first));
}

/* "A1 to A6: 6 laminations", or what it is glued from when that was glued before. */
static char *
describe_pack (const BsPlan *plan, const BsPack *pack, const char *name)
{
  unsigned long count = (unsigned long)pack->count;

  if (bs_packs_is_nest (plan, pack))
    /* Translators: "A1 to A6", and how many laminations that are; some of them are packs of their
     * own. */
    return g_strdup_printf (ngettext ("%s: %d lamination, some glued before",
                                      "%s: %d laminations, some glued before", count),
                            name, pack->count);
  /* Translators: "A1 to A6", and how many laminations that are. */
  return g_strdup_printf (ngettext ("%s: %d lamination", "%s: %d laminations", count), name,
                          pack->count);
}

static void
add_pack (BsPacksEditor *self, const BsPlan *plan, guint number)
{
  const BsPack *pack = &g_array_index (plan->packs, BsPack, number);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *button = gtk_button_new_with_label (_ ("Take apart"));
  g_autofree char *name = name_pack (plan, pack);
  g_autofree char *text = describe_pack (plan, pack, name);
  /* Translators: a button, read out: "Take apart: A1 to A6". */
  g_autofree char *told = g_strdup_printf (_ ("Take apart: %s"), name);
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, told, -1);
  g_object_set_data (G_OBJECT (button), "bs-number", GUINT_TO_POINTER (number));
  g_signal_connect (button, "clicked", G_CALLBACK (take_apart_cb), self);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), button);
  bs_blocks_append (self->packs, row);
}

/* All that is shown, as one text. */
static char *
describe (const BsPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->order->len; i++)
    g_string_append_printf (text, "%s\n", get_label (plan, (int)i));
  for (guint i = 0; i < plan->packs->len; i++)
    {
      const BsPack *pack = &g_array_index (plan->packs, BsPack, i);
      g_string_append_printf (text, "%d %d\n", pack->first, pack->count);
    }
  return g_string_free (text, FALSE);
}

static void
list_firsts (BsPacksEditor *self, const BsPlan *plan)
{
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);
  guint chosen = gtk_drop_down_get_selected (self->first);

  for (guint i = 0; i + 1 < plan->order->len; i++)
    gtk_string_list_append (labels, get_label (plan, (int)i));
  gtk_drop_down_set_model (self->first, G_LIST_MODEL (labels));
  if (chosen < g_list_model_get_n_items (G_LIST_MODEL (labels)))
    gtk_drop_down_set_selected (self->first, chosen);
}

static void
changed_cb (BsPacksEditor *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  char *now = describe (plan);
  gboolean is_same = g_strcmp0 (now, self->shown) == 0;

  g_free (self->shown);
  self->shown = now;
  if (is_same)
    return;
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (self->packs))) != NULL;)
    gtk_widget_unparent (child);
  for (guint i = 0; i < plan->packs->len; i++)
    add_pack (self, plan, i);
  gtk_widget_set_visible (GTK_WIDGET (self->packs), plan->packs->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->none), plan->packs->len == 0);
  gtk_widget_set_visible (GTK_WIDGET (self->maker), plan->order->len > 2);
  gtk_widget_set_visible (GTK_WIDGET (self), plan->order->len >= 2);
  list_firsts (self, plan);
  limit_count_cb (self);
}

static void
bs_packs_editor_dispose (GObject *object)
{
  BsPacksEditor *self = BS_PACKS_EDITOR (object);

  g_clear_pointer (&self->column, gtk_widget_unparent);
  g_clear_object (&self->session);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (bs_packs_editor_parent_class)->dispose (object);
}

static void
bs_packs_editor_class_init (BsPacksEditorClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_packs_editor_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "packs");
}

static void
add_labelled (GtkBox *box, const char *text, GtkWidget *widget)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (text);

  gtk_label_set_mnemonic_widget (GTK_LABEL (label), widget);
  if (GTK_IS_DROP_DOWN (widget))
    bs_drop_down_set_name (GTK_DROP_DOWN (widget), gtk_label_get_text (GTK_LABEL (label)));
  else
    gtk_accessible_update_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                    label, NULL, -1);
  gtk_box_append (box, label);
  gtk_box_append (box, widget);
}

static void
bs_packs_editor_init (BsPacksEditor *self)
{
  GtkWidget *heading = gtk_label_new (_ ("Your packs"));
  GtkWidget *make = gtk_button_new_with_label (_ ("Make a pack"));

  self->column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->packs = BS_BLOCKS (bs_blocks_new (3, 36, 0));
  self->none = GTK_LABEL (gtk_label_new (_ ("None: the whole slab is glued in one press.")));
  self->maker = GTK_BOX (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6));
  self->first = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  self->count = GTK_SPIN_BUTTON (gtk_spin_button_new_with_range (2.0, 2.0, 1.0));

  gtk_widget_add_css_class (heading, "strong");
  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_label_set_xalign (self->none, 0.0f);
  add_labelled (self->maker, _ ("_From"), GTK_WIDGET (self->first));
  add_labelled (self->maker, _ ("_how many"), GTK_WIDGET (self->count));
  gtk_box_append (self->maker, make);
  g_signal_connect_object (self->first, "notify::selected", G_CALLBACK (limit_count_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (make, "clicked", G_CALLBACK (make_cb), self, G_CONNECT_SWAPPED);

  gtk_box_append (GTK_BOX (self->column), heading);
  gtk_box_append (GTK_BOX (self->column), GTK_WIDGET (self->none));
  gtk_box_append (GTK_BOX (self->column), GTK_WIDGET (self->packs));
  gtk_box_append (GTK_BOX (self->column), GTK_WIDGET (self->maker));
  gtk_widget_set_parent (self->column, GTK_WIDGET (self));
}

GtkWidget *
bs_packs_editor_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsPacksEditor *self = g_object_new (BS_TYPE_PACKS_EDITOR, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
