/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-details.h"

#include <glib/gi18n.h>

#include "app/blocks.h"
#include "app/form.h"
#include "app/number-row.h"
#include "app/question.h"
#include "app/wood-fields.h"
#include "app/wood-table.h"
#include "core/text.h"
#include "core/units.h"
#include "core/wood-compare.h"
#include "plan/edits.h"
#include "plan/tables.h"
#include "words/table-names.h"
#include "words/timber.h"

enum
{
  ROW_HARDNESS,
  ROW_MOVEMENT,
  ROW_MASS,
  ROW_SAG,
  ROW_COST,
  N_ROWS
};

struct _BsWoodDetails
{
  GtkWidget parent_instance;

  /* owned */
  BsSession *session;
  char *id;
  GtkWidget *box; /* child */

  /* borrowed from the box */
  GtkLabel *name;
  GtkLabel *verdict;
  GtkLabel *facts;
  GtkLabel *source;
  BsNumberRow *rows[N_ROWS];
  GtkWidget *about, *use; /* blocks */
  GtkBox *figures;        /* block with the form of the wood's own figures */
  GtkWidget *use_all, *use_selected, *use_rest;
  GtkWidget *copy, *keep, *forget;
};

enum
{
  COPIED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsWoodDetails, bs_wood_details, GTK_TYPE_WIDGET)

static const BsWood *
get_wood (BsWoodDetails *self)
{
  return bs_record_wood.find (bs_session_get_plan (self->session), self->id);
}

/* What is shown. */

static void
set_sentences (GtkLabel *label, char **sentences)
{
  g_autofree char *text = g_strjoinv ("\n", sentences);

  gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
}

static void
show_verdict (BsWoodDetails *self, const BsWoodCard *card, const BsWoodWish *wish)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  g_auto (GStrv) reasons = bs_words_unfit (card, wish, plan->currency, plan->units);

  if (*reasons == NULL)
    gtk_label_set_text (self->verdict,
                        _ ("It fits all that is asked, as far as its figures are known."));
  else
    set_sentences (self->verdict, reasons);
}

static void
show_facts (BsWoodDetails *self, const BsWoodCard *card)
{
  const BsUnitSystem units = bs_session_get_plan (self->session)->units;
  g_autofree char *density = bs_units_format (card->density, BS_QUANTITY_DENSITY, units);
  g_autofree char *thickest = bs_units_format (card->thickest, BS_QUANTITY_LENGTH, units);
  /* Translators: a density; how hard a wood is to plane; how it bonds; a thickness. */
  g_autofree char *text = g_strdup_printf (
      _ ("Density: %s. Planing by hand: %s. Gluing: %s. Thickest to be had: %s."), density,
      bs_words_planing (card->planing), bs_words_bond (card->wood->bond), thickest);

  gtk_label_set_text (self->facts, text);
}

static void
show_numbers (BsWoodDetails *self, const BsWoodCard *card, const BsWoodWish *wish)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  BsWorking why[N_ROWS];

  bs_wood_explain_hardness (card, wish, &why[ROW_HARDNESS]);
  bs_wood_explain_movement (card, wish, &why[ROW_MOVEMENT]);
  bs_wood_explain_mass (card, wish, &why[ROW_MASS]);
  bs_wood_explain_sag (card, wish, &why[ROW_SAG]);
  bs_wood_explain_cost (card, wish, plan->currency, &why[ROW_COST]);
  for (guint i = 0; i < N_ROWS; i++)
    bs_number_row_show (self->rows[i], &why[i], plan->units, NULL);
}

static gboolean
has_lamination_without_wood (const BsPlan *plan)
{
  for (guint i = 0; i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = plan->laminations->pdata[i];
      if (lamination->wood == NULL)
        return TRUE;
    }
  return FALSE;
}

static void
update_buttons (BsWoodDetails *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  const char *selected = bs_session_get_selected (self->session);
  const BsWood *wood = get_wood (self);
  const gboolean has_wood = wood != NULL;

  gtk_widget_set_sensitive (self->use_all, has_wood);
  gtk_widget_set_sensitive (self->use_selected, has_wood && selected != NULL);
  gtk_widget_set_sensitive (self->use_rest, has_wood && has_lamination_without_wood (plan));
  gtk_widget_set_sensitive (self->copy, has_wood);
  gtk_widget_set_sensitive (self->keep, has_wood && bs_plan_find_wood (plan, self->id) != NULL);
  gtk_widget_set_sensitive (self->forget,
                            has_wood && bs_wood_table_is_kept (bs_wood_table_get (), self->id)
                                && bs_wood_table_find (bs_wood_table_get (), self->id) != NULL);
}

void
bs_wood_details_refresh (BsWoodDetails *self)
{
  g_return_if_fail (BS_IS_WOOD_DETAILS (self));

  const BsWood *wood = get_wood (self);
  gtk_widget_set_visible (self->about, wood != NULL);
  gtk_widget_set_visible (self->use, wood != NULL);
  update_buttons (self);
  if (wood == NULL)
    return;

  const BsStack *stack = bs_session_get_results (self->session)->stack;
  const BsWoodWish wish = bs_wood_wish_of (stack);
  const BsWoodCard card
      = bs_wood_compare (wood, &wish, bs_wood_thickest_lumber (stack->plan, wood->id));
  g_auto (GStrv) figures = bs_words_wood_figures (&card);
  g_autofree char *name = wood->botanical != NULL && *wood->botanical != '\0'
                              ? g_strdup_printf ("%s (%s)", bs_words_wood (wood), wood->botanical)
                              : g_strdup (bs_words_wood (wood));

  gtk_label_set_text (self->name, name);
  show_verdict (self, &card, &wish);
  show_facts (self, &card);
  set_sentences (self->source, figures);
  show_numbers (self, &card, &wish);
}

/* A program's wood keeps its name, and its source says by itself what was changed. */
static void
show_form (BsWoodDetails *self)
{
  const gboolean is_program = self->id != NULL && bs_tables_find_wood (self->id) != NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->figures))) != NULL)
    gtk_box_remove (self->figures, child);
  if (get_wood (self) == NULL)
    return;
  gtk_box_append (self->figures,
                  bs_form_new (self->session, N_ ("Its figures"), &bs_record_wood, self->id,
                               is_program ? bs_wood_fields + 1 : bs_wood_fields,
                               is_program ? bs_n_wood_fields - 2 : bs_n_wood_fields));
}

/* What is done with it. */

static void
use_for (BsWoodDetails *self, GPtrArray *ids)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  BsWood *wood = (BsWood *)get_wood (self);

  if (wood == NULL)
    return;
  g_ptr_array_add (ids, NULL);
  g_autoptr (BsPlan) edited = bs_edit_use_wood (plan, wood, (const char *const *)ids->pdata);
  bs_session_push (self->session, edited, _ ("Choose wood"), NULL);
}

static GPtrArray *
list_laminations (const BsPlan *plan, gboolean without_wood_only)
{
  GPtrArray *ids = g_ptr_array_new ();

  for (guint i = 0; i < plan->laminations->len; i++)
    {
      const BsLamination *lamination = plan->laminations->pdata[i];
      if (lamination->wood == NULL || !without_wood_only)
        g_ptr_array_add (ids, lamination->id);
    }
  return ids;
}

static void
use_all_cb (BsWoodDetails *self)
{
  g_autoptr (GPtrArray) ids = list_laminations (bs_session_get_plan (self->session), FALSE);
  use_for (self, ids);
}

static void
use_rest_cb (BsWoodDetails *self)
{
  g_autoptr (GPtrArray) ids = list_laminations (bs_session_get_plan (self->session), TRUE);
  use_for (self, ids);
}

static void
use_selected_cb (BsWoodDetails *self)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  g_ptr_array_add (ids, (gpointer)bs_session_get_selected (self->session));
  use_for (self, ids);
}

/* A new wood that begins with the figures of this one. */
static void
copy_cb (BsWoodDetails *self)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  const BsWood *from = get_wood (self);
  g_autoptr (GPtrArray) woods = bs_wood_table_list (bs_wood_table_get (), plan);

  if (from == NULL)
    return;
  g_autofree char *id = bs_record_make_id (woods, "own-wood");
  g_autoptr (BsWood) wood = bs_wood_copy (from);
  /* Translators: the name of a wood, and a citation. */
  g_autofree char *name = g_strdup_printf (_ ("%s, own"), bs_words_wood (from));
  g_autofree char *source
      = g_strdup_printf (_ ("set by you, beginning from %s: %s"), bs_words_wood (from),
                         from->source != NULL ? from->source : "–");

  bs_text_set (&wood->id, id);
  bs_text_set (&wood->name, name);
  bs_text_set (&wood->source, source);
  g_autoptr (BsPlan) edited = bs_edit_put_wood (plan, wood);
  bs_session_push (self->session, edited, _ ("Copy as your own wood"), NULL);
  g_signal_emit (self, signals[COPIED], 0, id);
}

static void
tell_problem (BsWoodDetails *self, const char *heading, const GError *error)
{
  g_autofree char *body = g_strconcat (error->message, ".", NULL);

  bs_question_tell (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), heading, body);
}

static void
keep_cb (BsWoodDetails *self)
{
  const BsWood *wood = get_wood (self);
  g_autoptr (GError) error = NULL;

  if (wood != NULL && !bs_wood_table_keep (bs_wood_table_get (), wood, &error))
    tell_problem (self, _ ("Your own table of woods could not be written"), error);
}

static void
forget_cb (BsWoodDetails *self)
{
  g_autoptr (GError) error = NULL;

  if (!bs_wood_table_forget (bs_wood_table_get (), self->id, &error))
    tell_problem (self, _ ("Your own table of woods could not be written"), error);
}

/* Built once. */

static GtkLabel *
add_label (GtkBox *box, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 48);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static GtkWidget *
add_button (BsWoodDetails *self, GtkWidget *box, const char *label, const char *hint,
            void (*clicked) (BsWoodDetails *self))
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_widget_set_tooltip_text (button, hint);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked), self);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static GtkWidget *
new_buttons (BsWoodDetails *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_label_set_text (add_label (GTK_BOX (box), "strong"), _ ("Use it"));
  self->use_all = add_button (self, box, _ ("For _all laminations"), NULL, use_all_cb);
  self->use_selected
      = add_button (self, box, _ ("For the _selected lamination"), NULL, use_selected_cb);
  self->use_rest = add_button (self, box, _ ("For those with_out a wood"), NULL, use_rest_cb);
  gtk_label_set_text (add_label (GTK_BOX (box), "strong"), _ ("Figures of your own"));
  self->copy = add_button (self, box, _ ("_Copy as your own wood"),
                           _ ("Another wood that begins with these figures"), copy_cb);
  self->keep = add_button (self, box, _ ("_Keep its figures for other plans"),
                           _ ("Writes them to your own table of woods"), keep_cb);
  self->forget
      = add_button (self, box, _ ("_Forget what you kept"),
                    _ ("Takes it out of your own table; this plan stays as it is"), forget_cb);
  return box;
}

static GtkWidget *
new_facts (BsWoodDetails *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->name = add_label (GTK_BOX (box), "strong");
  self->verdict = add_label (GTK_BOX (box), NULL);
  for (guint i = 0; i < N_ROWS; i++)
    {
      GtkWidget *row = bs_number_row_new ();
      gtk_widget_set_size_request (row, 320, -1);
      gtk_box_append (GTK_BOX (box), row);
      self->rows[i] = BS_NUMBER_ROW (row);
    }
  self->facts = add_label (GTK_BOX (box), NULL);
  self->source = add_label (GTK_BOX (box), "faint");
  return box;
}

static void
bs_wood_details_dispose (GObject *object)
{
  BsWoodDetails *self = BS_WOOD_DETAILS (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_wood_details_parent_class)->dispose (object);
}

static void
bs_wood_details_finalize (GObject *object)
{
  g_clear_pointer (&BS_WOOD_DETAILS (object)->id, g_free);
  G_OBJECT_CLASS (bs_wood_details_parent_class)->finalize (object);
}

static void
bs_wood_details_class_init (BsWoodDetailsClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = bs_wood_details_dispose;
  object_class->finalize = bs_wood_details_finalize;
  signals[COPIED] = g_signal_new ("copied", BS_TYPE_WOOD_DETAILS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
bs_wood_details_init (BsWoodDetails *self)
{
  self->box = bs_blocks_new (3, 36, 24);
  self->figures = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  self->about = new_facts (self);
  self->use = new_buttons (self);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

static GtkWidget *
new_wishes (BsWoodDetails *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (box),
                  bs_form_new (self->session, N_ ("What is asked of the wood"), &bs_record_plan,
                               NULL, bs_wood_wish_fields, bs_n_wood_wish_fields));
  gtk_box_append (
      GTK_BOX (box),
      bs_form_note_new (_ ("Where you ask no hardness, 3 to 4.2 kN (675 to 945 lbf) stands in: "
                           "common practice for a surface that is hit and planed again by hand, no "
                           "source. Every use has a range of its own.")));
  return box;
}

static void
add_blocks (BsWoodDetails *self)
{
  GtkWidget *const blocks[]
      = { self->about, new_wishes (self), GTK_WIDGET (self->figures), self->use };

  for (gsize i = 0; i < G_N_ELEMENTS (blocks); i++)
    {
      gtk_widget_set_valign (blocks[i], GTK_ALIGN_START);
      bs_blocks_append (BS_BLOCKS (self->box), blocks[i]);
    }
}

GtkWidget *
bs_wood_details_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsWoodDetails *self = g_object_new (BS_TYPE_WOOD_DETAILS, NULL);
  self->session = g_object_ref (session);
  add_blocks (self);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (update_buttons), self,
                           G_CONNECT_SWAPPED);
  bs_wood_details_refresh (self);
  return GTK_WIDGET (self);
}

void
bs_wood_details_set_id (BsWoodDetails *self, const char *id)
{
  g_return_if_fail (BS_IS_WOOD_DETAILS (self));

  if (g_strcmp0 (self->id, id) == 0)
    return;
  g_autofree char *old = self->id;
  self->id = g_strdup (id);
  show_form (self);
  bs_wood_details_refresh (self);
}
