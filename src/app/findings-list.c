/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/findings-list.h"

#include <glib/gi18n.h>

#include "app/finding-row.h"
#include "app/photos.h"
#include "app/resources.h"

struct _BsFindingsList
{
  GtkWidget parent_instance;

  BsSession *session;
  /* template */
  GtkInscription *heading;
  GtkListView *view;
  GtkSingleSelection *selection;
  GListStore *store;
};

G_DEFINE_FINAL_TYPE (BsFindingsList, bs_findings_list, GTK_TYPE_WIDGET)

/* Rows. */

static void
selected_cb (GtkListItem *item)
{
  bs_finding_row_set_open (BS_FINDING_ROW (gtk_list_item_get_child (item)),
                           gtk_list_item_get_selected (item));
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gtk_list_item_set_child (item, bs_finding_row_new ());
  g_signal_connect (item, "notify::selected", G_CALLBACK (selected_cb), NULL);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  bs_finding_row_show (BS_FINDING_ROW (gtk_list_item_get_child (item)),
                       BS_FINDING_ITEM (gtk_list_item_get_item (item)));
  selected_cb (item);
}

/* Contents. */

static void
update_heading (BsFindingsList *self, const BsResults *results, guint n_photos)
{
  guint n = results->findings->len + n_photos;
  guint n_stop = 0;
  g_autofree char *all = NULL, *text = NULL;

  for (guint i = 0; i < results->findings->len; i++)
    if (g_array_index (results->findings, BsFinding, i).severity == BS_SEVERITY_STOP)
      n_stop++;
  if (n == 0)
    all = g_strdup (_ ("No findings"));
  else
    all = g_strdup_printf (ngettext ("%u finding", "%u findings", n), n);
  if (n_stop == 0)
    text = g_steal_pointer (&all);
  else
    /* Translators: "12 findings"; how many of them stop the work. */
    text = g_strdup_printf (ngettext ("%s, %u stops the work", "%s, %u stop the work", n_stop), all,
                            n_stop);
  if (g_strcmp0 (gtk_inscription_get_text (self->heading), text) != 0)
    gtk_inscription_set_text (self->heading, text);
}

/* The photos that cannot be shown: notes, so they come last. */
static GPtrArray *
list_photos (BsFindingsList *self, const BsPlan *plan)
{
  BsPhotos *photos = bs_photos_get_shared (self->session);
  GPtrArray *items = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsBoard *board = g_ptr_array_index (plan->boards, i);
      const char *paths[] = { board->photo_top, board->photo_underside };

      for (guint face = 0; face < G_N_ELEMENTS (paths); face++)
        {
          const char *problem = bs_photos_get_problem (photos, paths[face]);

          if (problem != NULL)
            g_ptr_array_add (items, bs_finding_item_new_photo (board, problem));
        }
    }
  return items;
}

static void
fill (BsFindingsList *self, const BsResults *results, GPtrArray *photos)
{
  guint n = results->findings->len + photos->len;
  g_autoptr (GPtrArray) items = g_ptr_array_new_full (n, g_object_unref);

  for (guint i = 0; i < results->findings->len; i++)
    g_ptr_array_add (items, bs_finding_item_new (results, i));
  for (guint i = 0; i < photos->len; i++)
    g_ptr_array_add (items, g_object_ref (g_ptr_array_index (photos, i)));
  g_list_store_splice (self->store, 0, g_list_model_get_n_items (G_LIST_MODEL (self->store)),
                       items->pdata, n);
}

static void
changed_cb (BsFindingsList *self)
{
  g_assert (BS_IS_FINDINGS_LIST (self));

  BsResults *results = bs_session_get_results (self->session);
  g_autoptr (GPtrArray) photos = list_photos (self, results->stack->plan);
  update_heading (self, results, photos->len);
  if (!bs_session_has_preview (self->session))
    fill (self, results, photos);
}

static void
chosen_cb (BsFindingsList *self)
{
  g_assert (BS_IS_FINDINGS_LIST (self));

  BsFindingItem *item = gtk_single_selection_get_selected_item (self->selection);
  const char *lamination = item != NULL ? bs_finding_item_get_lamination (item) : NULL;
  if (lamination != NULL)
    bs_session_select (self->session, lamination);
}

static void
bs_findings_list_dispose (GObject *object)
{
  BsFindingsList *self = BS_FINDINGS_LIST (object);

  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL;)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_findings_list_parent_class)->dispose (object);
}

static void
bs_findings_list_class_init (BsFindingsListClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_findings_list_dispose;

  g_type_ensure (BS_TYPE_FINDING_ITEM);
  gtk_widget_class_set_template_from_resource (widget_class, BS_RESOURCES "/findings-list.ui");
  gtk_widget_class_bind_template_child (widget_class, BsFindingsList, heading);
  gtk_widget_class_bind_template_child (widget_class, BsFindingsList, selection);
  gtk_widget_class_bind_template_child (widget_class, BsFindingsList, store);
  gtk_widget_class_bind_template_child (widget_class, BsFindingsList, view);
  gtk_widget_class_bind_template_callback (widget_class, bind_cb);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, setup_cb);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "findings");
}

static void
bs_findings_list_init (BsFindingsList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Findings"), -1);
}

void
bs_findings_list_set_session (BsFindingsList *self, BsSession *session)
{
  g_return_if_fail (BS_IS_FINDINGS_LIST (self));
  g_return_if_fail (BS_IS_SESSION (session));
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (bs_photos_get_shared (session), "changed", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  changed_cb (self);
}
