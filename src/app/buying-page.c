/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/buying-page.h"

#include <glib/gi18n.h>

#include "app/buying-fields.h"
#include "app/focus-order.h"
#include "app/form.h"
#include "app/number-row.h"
#include "app/page.h"
#include "app/purchase-view.h"
#include "core/purchase-put.h"
#include "core/slab-wish.h"
#include "core/wanted.h"
#include "plan/edits.h"
#include "words/buying.h"

struct _BsBuyingPage
{
  GtkWidget parent_instance;

  BsSession *session;
  BsPlan *shown; /* whose wants are shown; NULL at first */
  GtkWidget *page;
  /* borrowed from the page */
  GtkWidget *summary;
  GtkWidget *bound;
  GtkWidget *waiting; /* how far the search is, and a button that ends it */
  GtkWidget *progress;
  GtkWidget *shortfalls;
  GtkWidget *wants;
  GtkWidget *slab; /* what the slab asks for, while there are no laminations */
  GtkWidget *slab_count;
  GtkWidget *needs; /* the numbers of the first want */
  GtkWidget *count;
  GtkWidget *thickness;
  GtkWidget *width;
  GtkWidget *purchase; /* what to buy: the view and a button */
  GtkWidget *view;
  GtkWidget *put;
};

G_DEFINE_FINAL_TYPE (BsBuyingPage, bs_buying_page, GTK_TYPE_WIDGET)

static BsStudy *
get_study (BsBuyingPage *self)
{
  return bs_session_get_study (self->session, &bs_study_purchase);
}

/* Shows a text, or nothing when there is none; takes it. */
static void
set_text (GtkWidget *label, char *text)
{
  gtk_label_set_text (GTK_LABEL (label), text != NULL ? text : "");
  gtk_widget_set_visible (label, text != NULL && *text != '\0');
  g_free (text);
}

static char *
list_shortfalls (const BsPurchase *purchase)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  for (guint i = 0; purchase->stock->len > 0 && i < purchase->wanted->len; i++)
    {
      g_autofree char *line = bs_words_shortfall (purchase, i);
      if (line != NULL)
        g_strv_builder_add (lines, line);
    }
  g_auto (GStrv) all = g_strv_builder_end (lines);
  return g_strjoinv ("\n", all);
}

static void
halve_cb (BsBuyingPage *self, GtkButton *button)
{
  const guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "want"));

  if (self->shown != bs_session_get_plan (self->session))
    return;
  g_autoptr (GArray) wanted = bs_wanted_new (self->shown);
  g_autoptr (BsPlan) halved
      = bs_edit_halve_want (self->shown, &g_array_index (wanted, BsWant, index));
  bs_session_push (self->session, halved, _ ("Take two layers"), NULL);
}

static GtkWidget *
halve_new (BsBuyingPage *self, guint index)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Take two layers"));

  g_object_set_data (G_OBJECT (button), "want", GUINT_TO_POINTER (index));
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (button, _ ("Asks for twice as many pieces, half as thick"));
  g_signal_connect_object (button, "clicked", G_CALLBACK (halve_cb), self, G_CONNECT_SWAPPED);
  return button;
}

/* Each with what its boards must have. */
static GtkWidget *
want_new (BsBuyingPage *self, const BsPurchase *purchase, guint index)
{
  const BsWant *want = &g_array_index (purchase->wanted, BsWant, index);
  g_autofree char *what = bs_words_want (want, purchase->plan->units);
  g_autofree char *rough = bs_words_want_rough (purchase, index);
  /* Translators: what is wanted, and a sentence on the boards that it takes. */
  g_autofree char *line = g_strdup_printf (_ ("%s. %s"), what, rough);
  g_autofree char *layers = bs_words_purchase_layers (purchase, index);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (box), bs_page_text_new (line, NULL));
  if (layers != NULL)
    gtk_box_append (GTK_BOX (box), bs_page_text_new (layers, "faint"));
  if (layers != NULL && bs_want_can_be_layers (want, purchase->plan))
    gtk_box_append (GTK_BOX (box), halve_new (self, index));
  return box;
}

/* They hang on the plan alone, and not on how far the search is. */
static void
show_wants (BsBuyingPage *self, const BsPurchase *purchase)
{
  GtkWidget *child;

  gtk_widget_set_visible (gtk_widget_get_parent (self->wants), purchase->wanted->len > 0);
  if (self->shown == purchase->plan)
    return;
  g_clear_pointer (&self->shown, bs_plan_unref);
  self->shown = bs_plan_ref (purchase->plan);
  bs_focus_leave (self->wants, self->page);
  while ((child = gtk_widget_get_first_child (self->wants)) != NULL)
    gtk_box_remove (GTK_BOX (self->wants), child);
  for (guint i = 0; i < purchase->wanted->len; i++)
    gtk_box_append (GTK_BOX (self->wants), want_new (self, purchase, i));
}

static void
show_needs (BsBuyingPage *self, const BsPurchase *purchase)
{
  BsUnitSystem units = purchase->plan->units;
  BsWorking why;

  gtk_widget_set_visible (self->needs, purchase->wanted->len > 0);
  if (purchase->wanted->len == 0)
    return;
  bs_purchase_explain_count (purchase, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->count), &why, units, NULL);
  bs_purchase_explain_thickness (purchase, 0, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->thickness), &why, units, NULL);
  bs_purchase_explain_width (purchase, 0, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->width), &why, units, NULL);
}

static void
show_waiting (BsBuyingPage *self)
{
  BsStudy *study = get_study (self);
  const gboolean is_working = bs_study_is_working (study);

  if (!is_working)
    bs_focus_leave (self->waiting, self->page);
  gtk_widget_set_visible (self->waiting, is_working);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), bs_study_get_progress (study));
}

static void
show_slab (BsBuyingPage *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  BsSlabWish wish = bs_slab_wish (plan, plan->buying.lamination_size);
  BsWorking why;

  if (plan->laminations->len > 0)
    bs_focus_leave (self->slab, self->page);
  gtk_widget_set_visible (self->slab, plan->laminations->len == 0);
  bs_slab_wish_explain (&wish, plan, plan->buying.lamination_size, &why);
  bs_number_row_show (BS_NUMBER_ROW (self->slab_count), &why, plan->units, NULL);
}

static void
changed_cb (BsBuyingPage *self)
{
  BsStudy *study = get_study (self);
  const BsPurchase *purchase = bs_study_get_result (study);
  gboolean is_current = bs_study_is_current (study);

  show_waiting (self);
  if (!is_current || purchase->cuts == NULL)
    bs_focus_leave (self->put, self->page);
  gtk_widget_set_sensitive (self->put, is_current && purchase->cuts != NULL);
  if (!is_current) /* what is shown stays until the new one is there */
    return;
  set_text (self->summary, bs_words_purchase (purchase));
  set_text (self->bound, bs_words_purchase_bound (purchase));
  set_text (self->shortfalls, list_shortfalls (purchase));
  show_wants (self, purchase);
  show_needs (self, purchase);
  gtk_widget_set_visible (self->purchase, purchase->cuts != NULL);
  bs_purchase_view_show (BS_PURCHASE_VIEW (self->view), purchase);
}

static void
stop_cb (BsBuyingPage *self)
{
  bs_study_stop (get_study (self));
}

static void
make_cb (BsBuyingPage *self)
{
  g_autoptr (BsPlan) plan = bs_slab_wish_make_laminations (bs_session_get_plan (self->session));

  bs_session_push (self->session, plan, _ ("Make the laminations"), NULL);
}

static void
put_cb (BsBuyingPage *self)
{
  BsStudy *study = get_study (self);
  const BsPurchase *purchase = bs_study_get_result (study);

  if (!bs_study_is_current (study) || purchase->plan != bs_session_get_plan (self->session))
    return;
  g_autoptr (BsPlan) plan = bs_purchase_put (purchase);
  bs_session_push (self->session, plan, _ ("Put boards in the rack"), NULL);
}

static void
bs_buying_page_dispose (GObject *object)
{
  BsBuyingPage *self = BS_BUYING_PAGE (object);

  g_clear_pointer (&self->page, gtk_widget_unparent);
  g_clear_pointer (&self->shown, bs_plan_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_buying_page_parent_class)->dispose (object);
}

static void
bs_buying_page_class_init (BsBuyingPageClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_buying_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
bs_buying_page_init (BsBuyingPage *self)
{
  self->page = bs_page_new ();
  gtk_widget_set_parent (self->page, GTK_WIDGET (self));
}

/* Sections. */

static GtkWidget *
box_new (const char *heading)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  if (heading != NULL)
    gtk_box_append (GTK_BOX (box), bs_page_text_new (heading, "strong"));
  return box;
}

static GtkWidget *
waiting_new (BsBuyingPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *looking = bs_page_text_new (_ ("Looking for a better one…"), "faint");
  GtkWidget *stop = gtk_button_new_with_label (_ ("This will do"));

  self->progress = gtk_progress_bar_new ();
  gtk_widget_set_valign (self->progress, GTK_ALIGN_CENTER);
  gtk_widget_set_size_request (self->progress, 180, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How far the search is"), -1);
  gtk_widget_set_tooltip_text (stop, _ ("Ends the search and keeps what it has found"));
  g_signal_connect_swapped (stop, "clicked", G_CALLBACK (stop_cb), self);
  gtk_label_set_wrap (GTK_LABEL (looking), FALSE);
  gtk_box_append (GTK_BOX (box), looking);
  gtk_box_append (GTK_BOX (box), self->progress);
  gtk_box_append (GTK_BOX (box), stop);
  return box;
}

static GtkWidget *
summary_new (BsBuyingPage *self)
{
  GtkWidget *box = box_new (NULL);

  self->summary = bs_page_text_new (_ ("Working…"), "strong");
  self->bound = bs_page_text_new (NULL, NULL);
  self->shortfalls = bs_page_text_new (NULL, NULL);
  self->waiting = waiting_new (self);
  gtk_box_append (GTK_BOX (box), self->summary);
  gtk_box_append (GTK_BOX (box), self->shortfalls);
  gtk_box_append (GTK_BOX (box), self->bound);
  gtk_box_append (GTK_BOX (box), self->waiting);
  return box;
}

static GtkWidget *
slab_new (BsBuyingPage *self)
{
  GtkWidget *box = box_new (NULL);
  GtkWidget *make = gtk_button_new_with_label (_ ("Make the laminations for this slab"));

  self->slab_count = bs_number_row_new ();
  gtk_widget_set_halign (make, GTK_ALIGN_START);
  g_signal_connect_swapped (make, "clicked", G_CALLBACK (make_cb), self);
  gtk_box_append (GTK_BOX (box), bs_form_new (self->session, N_ ("Laminations"), &bs_record_plan,
                                              NULL, bs_buying_size, bs_n_buying_size));
  gtk_box_append (GTK_BOX (box), self->slab_count);
  gtk_box_append (GTK_BOX (box), make);
  return box;
}

static GtkWidget *
wants_new (BsBuyingPage *self)
{
  GtkWidget *box = box_new (_ ("What is wanted"));

  self->wants = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (box), self->wants);
  return box;
}

static GtkWidget *
needs_new (BsBuyingPage *self)
{
  GtkWidget *box = box_new (NULL);

  self->count = bs_number_row_new ();
  self->thickness = bs_number_row_new ();
  self->width = bs_number_row_new ();
  gtk_box_append (GTK_BOX (box), self->count);
  gtk_box_append (GTK_BOX (box), self->thickness);
  gtk_box_append (GTK_BOX (box), self->width);
  return box;
}

static GtkWidget *
purchase_new (BsBuyingPage *self)
{
  GtkWidget *box = box_new (_ ("What to buy"));

  self->view = bs_purchase_view_new ();
  self->put = gtk_button_new_with_label (_ ("Put these boards in the rack"));
  gtk_widget_set_halign (self->put, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (
      self->put, _ ("When they are bought: they stand in the rack then, with their cuts"));
  g_signal_connect_swapped (self->put, "clicked", G_CALLBACK (put_cb), self);
  gtk_box_append (GTK_BOX (box), self->view);
  gtk_box_append (GTK_BOX (box), self->put);
  return box;
}

static void
build (BsBuyingPage *self)
{
  self->slab = slab_new (self);
  bs_page_add_wide (self->page, summary_new (self));
  bs_page_add (self->page, self->slab);
  bs_page_add (self->page, bs_form_new (self->session, N_ ("How much"), &bs_record_plan, NULL,
                                        bs_buying_amounts, bs_n_buying_amounts));
  self->needs = needs_new (self);
  bs_page_add (self->page, self->needs);
  bs_page_add_wide (self->page, wants_new (self));
  bs_page_add_wide (self->page, bs_rows_editor_new (self->session, &bs_buying_parts, NULL));
  bs_page_add_wide (self->page, bs_rows_editor_new (self->session, &bs_buying_offers, NULL));
  self->purchase = purchase_new (self);
  bs_page_add_wide (self->page, self->purchase);
  bs_page_add (self->page, bs_form_new (self->session, N_ ("Saw"), &bs_record_plan, NULL,
                                        bs_buying_saw, bs_n_buying_saw));
}

GtkWidget *
bs_buying_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsBuyingPage *self = g_object_new (BS_TYPE_BUYING_PAGE, NULL);
  BsStudy *study;

  self->session = g_object_ref (session);
  build (self);
  study = get_study (self);
  g_signal_connect_object (study, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (study, "notify::progress", G_CALLBACK (show_waiting), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_slab), self, G_CONNECT_SWAPPED);
  show_slab (self);
  changed_cb (self);
  return GTK_WIDGET (self);
}
