/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/shop-page.h"

#include <glib/gi18n.h>

#include "app/drop-down.h"
#include "app/form.h"
#include "app/page.h"
#include "app/rows-editor.h"
#include "app/wood-fields.h"
#include "core/text.h"
#include "plan/edits.h"
#include "plan/tables.h"
#include "words/table-names.h"

#define FIELD(kind, label, hint, type, member, ...)                                                \
  {                                                                                                \
    kind, label, hint, G_STRUCT_OFFSET (type, member), __VA_ARGS__                                 \
  }

static const BsField room_fields[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Temperature"), N_ ("While you glue; the wood should be as warm"),
         BsPlan, shop.climate.temperature_c, &bs_limits.temperature),
  FIELD (BS_FIELD_NUMBER, N_ ("Humidity"), N_ ("Relative humidity of the air"), BsPlan,
         shop.climate.humidity_pct, &bs_limits.humidity),
  FIELD (BS_FIELD_NUMBER, N_ ("Planer width"), N_ ("0 when there is none"), BsPlan,
         shop.planer_width, &bs_limits.planer_width),
  FIELD (BS_FIELD_NUMBER, N_ ("Jointer width"), N_ ("0 when there is none"), BsPlan,
         shop.jointer_width, &bs_limits.jointer_width),
};

static const BsField hands_fields[] = {
  FIELD (BS_FIELD_WHOLE, N_ ("People"), N_ ("Pairs of hands during the glue-up"), BsPlan,
         shop.people, &bs_limits.people),
  FIELD (BS_FIELD_NUMBER, N_ ("Most that you lift"),
         N_ ("Without help; empty when you would rather not say"), BsPlan, shop.max_lift_kg,
         &bs_limits.max_lift, TRUE),
  FIELD (BS_FIELD_NUMBER, N_ ("Spreading glue"), N_ ("One person; time it on a test piece"), BsPlan,
         shop.times.spread_s_per_m2, &bs_limits.spread_time),
  FIELD (BS_FIELD_NUMBER, N_ ("Each joint besides"), N_ ("Picking up brush and bottle, wiping"),
         BsPlan, shop.times.joint_s, &bs_limits.hand_time),
  FIELD (BS_FIELD_NUMBER, N_ ("Setting a lamination down"), NULL, BsPlan, shop.times.place_s,
         &bs_limits.hand_time),
  FIELD (BS_FIELD_NUMBER, N_ ("Lining it up"), NULL, BsPlan, shop.times.align_s,
         &bs_limits.hand_time),
  FIELD (BS_FIELD_NUMBER, N_ ("Tightening a clamp"), NULL, BsPlan, shop.times.tighten_s,
         &bs_limits.hand_time),
};

static const BsField adhesive_fields[] = {
  FIELD (BS_FIELD_NUMBER, N_ ("Open time at 20 °C"), N_ ("Longest from spreading to contact"),
         BsAdhesive, open_s, &bs_limits.assembly_time),
  FIELD (BS_FIELD_NUMBER, N_ ("Total assembly time at 20 °C"),
         N_ ("Longest from spreading to full pressure"), BsAdhesive, total_s,
         &bs_limits.assembly_time),
  FIELD (BS_FIELD_NUMBER, N_ ("In the clamps at 20 °C"), NULL, BsAdhesive, clamp_s,
         &bs_limits.clamp_time),
  FIELD (BS_FIELD_NUMBER, N_ ("Not colder than"), NULL, BsAdhesive, min_temperature_c,
         &bs_limits.adhesive_temperature),
  FIELD (BS_FIELD_NUMBER, N_ ("Spread on a glue line"), NULL, BsAdhesive, spread_g_per_m2,
         &bs_limits.spread),
  FIELD (BS_FIELD_NUMBER, N_ ("Pressure, from"), NULL, BsAdhesive, min_pressure_mpa,
         &bs_limits.pressure),
  FIELD (BS_FIELD_NUMBER, N_ ("Pressure, to"), NULL, BsAdhesive, max_pressure_mpa,
         &bs_limits.pressure),
};

/* The class of adhesive: choosing one puts its figures into the plan. */

static guint
find_adhesive_row (const char *id)
{
  const GPtrArray *adhesives = bs_tables_get_adhesives ();
  for (guint i = 0; i < adhesives->len; i++)
    if (id != NULL && g_str_equal (((BsAdhesive *)g_ptr_array_index (adhesives, i))->id, id))
      return i;
  return GTK_INVALID_LIST_POSITION;
}

static void
adhesive_chosen_cb (GtkDropDown *choice, GParamSpec *pspec, BsSession *session)
{
  const BsPlan *plan = bs_session_get_plan (session);
  guint row = gtk_drop_down_get_selected (choice);

  if (row == GTK_INVALID_LIST_POSITION || row == find_adhesive_row (plan->adhesive.id))
    return;
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);
  bs_adhesive_set (&copy->adhesive, g_ptr_array_index (bs_tables_get_adhesives (), row));
  bs_session_push (session, copy, _ ("Choose adhesive"), NULL);
}

static void
show_adhesive_cb (GtkDropDown *choice, BsSession *session)
{
  gtk_drop_down_set_selected (choice,
                              find_adhesive_row (bs_session_get_plan (session)->adhesive.id));
}

static void
show_adhesive_source_cb (GtkLabel *note, BsSession *session)
{
  const BsAdhesive *adhesive = &bs_session_get_plan (session)->adhesive;
  const char *source = adhesive->source != NULL ? adhesive->source : "";
  g_autofree char *text = NULL;

  /* Translators: %s is a citation, here and below */
  if (adhesive->is_own_figures)
    text = g_strdup_printf (
        _ ("Set by you, beginning from: %s. The maker’s data sheet comes first."), source);
  else
    text = g_strdup_printf (
        _ ("Source: %s. The maker’s data sheet comes first: type its figures here."), source);
  gtk_label_set_text (note, text);
}

static GtkWidget *
new_adhesive_choice (BsSession *session)
{
  const GPtrArray *adhesives = bs_tables_get_adhesives ();
  GtkStringList *names = gtk_string_list_new (NULL);
  for (guint i = 0; i < adhesives->len; i++)
    gtk_string_list_append (names, bs_words_adhesive (g_ptr_array_index (adhesives, i)));

  GtkWidget *choice = gtk_drop_down_new (G_LIST_MODEL (names), NULL);
  bs_drop_down_set_name (GTK_DROP_DOWN (choice), _ ("Adhesive"));
  show_adhesive_cb (GTK_DROP_DOWN (choice), session);
  g_signal_connect_object (choice, "notify::selected", G_CALLBACK (adhesive_chosen_cb), session, 0);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_adhesive_cb), choice,
                           G_CONNECT_SWAPPED);
  return choice;
}

static GtkWidget *
new_adhesive_block (BsSession *session)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *heading = gtk_label_new (_ ("Adhesive"));
  GtkWidget *note = bs_form_note_new (NULL);

  gtk_widget_add_css_class (heading, "strong");
  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_box_append (GTK_BOX (block), heading);
  gtk_box_append (GTK_BOX (block), new_adhesive_choice (session));
  gtk_box_append (GTK_BOX (block), bs_form_new (session, NULL, &bs_record_adhesive, NULL,
                                                adhesive_fields, G_N_ELEMENTS (adhesive_fields)));
  gtk_box_append (GTK_BOX (block), bs_form_new (session, NULL, &bs_record_glue_price, NULL,
                                                &bs_glue_price_field, 1));
  gtk_box_append (GTK_BOX (block), note);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_adhesive_source_cb), note,
                           G_CONNECT_SWAPPED);
  show_adhesive_source_cb (GTK_LABEL (note), session);
  return block;
}

/* Clamps and cauls. */

static const BsField clamp_fields[] = {
  FIELD (BS_FIELD_TEXT, N_ ("Kind"), NULL, BsClampKind, name),
  FIELD (BS_FIELD_WHOLE, N_ ("Number"), NULL, BsClampKind, count, &bs_limits.clamp_count),
  FIELD (BS_FIELD_NUMBER, N_ ("Greatest force"),
         N_ ("By its maker, or measured; a strong hand, not two"), BsClampKind, max_force_n,
         &bs_limits.clamp_force),
  FIELD (BS_FIELD_NUMBER, N_ ("Reach"), N_ ("Greatest distance between the heads"), BsClampKind,
         reach, &bs_limits.clamp_reach),
  FIELD (BS_FIELD_NUMBER, N_ ("Head, along"), N_ ("Along the grain of the slab"), BsClampKind,
         head_width, &bs_limits.clamp_head),
  FIELD (BS_FIELD_NUMBER, N_ ("Head, high"), NULL, BsClampKind, head_height, &bs_limits.clamp_head),
};

static const BsField caul_fields[] = {
  FIELD (BS_FIELD_TEXT, N_ ("Kind"), NULL, BsCaulKind, name),
  FIELD (BS_FIELD_WHOLE, N_ ("Number"), NULL, BsCaulKind, count, &bs_limits.caul_count),
  FIELD (BS_FIELD_NUMBER, N_ ("Length"), NULL, BsCaulKind, length, &bs_limits.caul_length),
  FIELD (BS_FIELD_NUMBER, N_ ("Thickness"), N_ ("From the clamp heads to the slab"), BsCaulKind,
         thickness, &bs_limits.caul_thickness),
  FIELD (BS_FIELD_NUMBER, N_ ("Height"), NULL, BsCaulKind, height, &bs_limits.caul_height),
  FIELD (BS_FIELD_NUMBER, N_ ("Stiffness"), N_ ("Modulus of elasticity along its grain"),
         BsCaulKind, moe_mpa, &bs_limits.moe),
};

static guint
count_clamps (const BsPlan *plan, const char *owner)
{
  return plan->shop.clamps->len;
}

static char *
dup_clamp_id (const BsPlan *plan, const char *owner, guint index)
{
  return g_strdup (((BsClampKind *)g_ptr_array_index (plan->shop.clamps, index))->id);
}

/* Begins as what stands in most shops; the force is the hand-tightened pipe clamp's of a trade
 * journal's test with several operators, 2010 (low authority). */
static BsPlan *
add_clamp (const BsPlan *plan, const char *owner)
{
  BsPlan *copy = bs_plan_copy (plan);
  g_autofree char *id = bs_record_make_id (copy->shop.clamps, "clamp");
  BsClampKind *kind = bs_clamp_kind_new (id);

  bs_text_set (&kind->name, _ ("Bar clamp"));
  kind->count = 6;
  kind->max_force_n = 4700.0;
  kind->reach = 1000.0;
  kind->head_width = 35.0;
  kind->head_height = 35.0;
  g_ptr_array_add (copy->shop.clamps, kind);
  return copy;
}

static BsPlan *
take_off_clamp (const BsPlan *plan, const char *owner, guint index)
{
  const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, index);
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);
  return bs_edit_remove_clamp (copy, kind->id);
}

static const BsRows clamp_rows = {
  .heading = N_ ("Clamps"),
  .add_label = N_ ("Add a kind of clamp"),
  .none = N_ ("No clamps yet. Add the kinds that you own or can borrow."),
  .record = &bs_record_clamp,
  .fields = clamp_fields,
  .n_fields = G_N_ELEMENTS (clamp_fields),
  .count = count_clamps,
  .dup_id = dup_clamp_id,
  .add = add_clamp,
  .take_off = take_off_clamp,
};

static guint
count_cauls (const BsPlan *plan, const char *owner)
{
  return plan->shop.cauls->len;
}

static char *
dup_caul_id (const BsPlan *plan, const char *owner, guint index)
{
  return g_strdup (((BsCaulKind *)g_ptr_array_index (plan->shop.cauls, index))->id);
}

static BsPlan *
add_caul (const BsPlan *plan, const char *owner)
{
  BsPlan *copy = bs_plan_copy (plan);
  g_autofree char *id = bs_record_make_id (copy->shop.cauls, "caul");
  BsCaulKind *kind = bs_caul_kind_new (id);

  bs_text_set (&kind->name, _ ("Hardwood bar"));
  kind->count = 2;
  kind->length = plan->slab.length;
  kind->thickness = 50.0;
  kind->height = plan->slab.thickness;
  kind->moe_mpa = 12000.0;
  g_ptr_array_add (copy->shop.cauls, kind);
  return copy;
}

static BsPlan *
take_off_caul (const BsPlan *plan, const char *owner, guint index)
{
  BsPlan *copy = bs_plan_copy (plan);
  g_ptr_array_remove_index (copy->shop.cauls, index);
  return copy;
}

static const BsRows caul_rows = {
  .heading = N_ ("Cauls"),
  .add_label = N_ ("Add a kind of caul"),
  .none = N_ ("No cauls yet. A stiff bar on each side spreads what the clamps press."),
  .record = &bs_record_caul,
  .fields = caul_fields,
  .n_fields = G_N_ELEMENTS (caul_fields),
  .count = count_cauls,
  .dup_id = dup_caul_id,
  .add = add_caul,
  .take_off = take_off_caul,
};

/* The room above the hands: together as high as the adhesive beside them. */
static GtkWidget *
new_room_block (BsSession *session)
{
  GtkWidget *block = gtk_box_new (GTK_ORIENTATION_VERTICAL, 24);

  gtk_box_append (GTK_BOX (block), bs_form_new (session, N_ ("Room and machines"), &bs_record_plan,
                                                NULL, room_fields, G_N_ELEMENTS (room_fields)));
  gtk_box_append (GTK_BOX (block), bs_form_new (session, N_ ("Hands"), &bs_record_plan, NULL,
                                                hands_fields, G_N_ELEMENTS (hands_fields)));
  return block;
}

GtkWidget *
bs_shop_page_new (BsSession *session)
{
  GtkWidget *page = bs_page_new ();

  bs_page_add (page, new_room_block (session));
  bs_page_add (page, new_adhesive_block (session));
  bs_page_add_wide (page, bs_rows_editor_new (session, &clamp_rows, NULL));
  bs_page_add_wide (page, bs_rows_editor_new (session, &caul_rows, NULL));
  return page;
}
