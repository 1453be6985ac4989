/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/board-details.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/board-canvas.h"
#include "app/board-fields.h"
#include "app/form.h"
#include "app/label.h"
#include "app/number-row.h"
#include "app/severity-sign.h"
#include "core/board-forecast.h"
#include "core/text.h"
#include "core/units.h"
#include "plan/edits.h"
#include "words/boards.h"
#include "words/words.h"

struct _BsBoardDetails
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *canvas;         /* BsBoardCanvas */
  GtkWidget *finish;         /* BsNumberRow */
  GtkWidget *heed;           /* GtkLabel */
  GtkWidget *photos_note;    /* GtkBox of a note: */
  GtkWidget *photos_problem; /* GtkLabel */
  GtkWidget *clear[2];       /* GtkButton: takes a photo off, of the top and of the underside */
  GtkWidget *defects;        /* BsRowsEditor */
  GtkWidget *rings;          /* form */
  GtkWidget *run_out;        /* form */

  /* owned */
  BsSession *session;
  BsPhotos *photos;
  GtkFileChooserNative *chooser; /* while it is open */
  char *id;

  gboolean is_underside; /* that the chooser is open for */
};

G_DEFINE_FINAL_TYPE (BsBoardDetails, bs_board_details, GTK_TYPE_WIDGET)

static const BsBoard *
get_board (BsBoardDetails *self)
{
  return self->id != NULL ? bs_plan_find_board (bs_session_get_plan (self->session), self->id)
                          : NULL;
}

/* Photos. */

static void
set_photo (BsBoardDetails *self, gboolean is_underside, const char *path)
{
  const BsBoard *present = get_board (self);

  if (present == NULL)
    return;
  g_autoptr (BsBoard) board = bs_board_copy (present);
  bs_text_set (is_underside ? &board->photo_underside : &board->photo_top, path);
  g_autoptr (BsPlan) edited = bs_edit_put_board (bs_session_get_plan (self->session), board);
  bs_session_push (self->session, edited,
                   path != NULL ? _ ("Choose a photo") : _ ("Take a photo off"), NULL);
}

static void
photo_chosen_cb (BsBoardDetails *self, int response, GtkNativeDialog *dialog)
{
  g_autoptr (GtkFileChooserNative) chooser = g_steal_pointer (&self->chooser);
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT
                               ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser))
                               : NULL;
  g_autofree char *path = file != NULL ? bs_photos_refer (self->session, file) : NULL;

  if (path != NULL)
    set_photo (self, self->is_underside, path);
}

static void
choose_photo_cb (GtkButton *button, BsBoardDetails *self)
{
  GtkRoot *window = gtk_widget_get_root (GTK_WIDGET (self));
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  self->is_underside = g_object_get_data (G_OBJECT (button), "underside") != NULL;
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (
      self->is_underside ? _ ("Photo of the underside") : _ ("Photo of the top"),
      GTK_WINDOW (window), GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL);
  gtk_file_filter_set_name (filter, _ ("Pictures"));
  gtk_file_filter_add_pixbuf_formats (filter);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (photo_chosen_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
clear_photo_cb (GtkButton *button, BsBoardDetails *self)
{
  set_photo (self, g_object_get_data (G_OBJECT (button), "underside") != NULL, NULL);
}

static char *
describe_photo (BsBoardDetails *self, const char *path)
{
  if (path == NULL)
    return NULL;
  if (bs_photos_get_problem (self->photos, path) != NULL)
    return g_strdup_printf ("%s %s", bs_photos_get_problem (self->photos, path),
                            bs_words_photo_remedy ());
  if (g_path_is_absolute (path))
    return g_strdup_printf (_ ("The photo %s does not lie below the folder of the plan: where the "
                               "plan is taken, it is missed."),
                            path);
  return NULL;
}

static void
show_photos (BsBoardDetails *self)
{
  const BsBoard *board = get_board (self);
  if (board == NULL)
    return;

  g_autofree char *top = describe_photo (self, board->photo_top);
  g_autofree char *underside = describe_photo (self, board->photo_underside);
  g_autofree char *both
      = g_strjoin (top != NULL && underside != NULL ? "\n" : "", top != NULL ? top : "",
                   underside != NULL ? underside : "", NULL);
  gtk_label_set_text (GTK_LABEL (self->photos_problem), both);
  gtk_widget_set_visible (self->photos_note, *both != '\0');
  gtk_widget_set_sensitive (self->clear[0], board->photo_top != NULL);
  gtk_widget_set_sensitive (self->clear[1], board->photo_underside != NULL);
}

/* What it finishes at. */

static void
show_finish (BsBoardDetails *self)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  const BsBoard *board = get_board (self);
  BsWorking why;

  if (board == NULL)
    return;
  BsBoardForecast forecast = bs_board_forecast (board, plan);
  bs_board_forecast_explain (&forecast, plan, &why);
  g_autofree char *pieces = bs_words_board_pieces (&forecast, plan->units);
  g_auto (GStrv) heed = bs_words_board_cautions (&forecast, plan);
  g_autofree char *text = g_strjoinv ("\n", heed);

  bs_number_row_show (BS_NUMBER_ROW (self->finish), &why, plan->units, pieces);
  gtk_label_set_text (GTK_LABEL (self->heed), text);
  gtk_widget_set_visible (self->heed, *text != '\0');
}

static void
show (BsBoardDetails *self)
{
  show_finish (self);
  show_photos (self);
}

static void
bs_board_details_dispose (GObject *object)
{
  BsBoardDetails *self = BS_BOARD_DETAILS (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->chooser);
  g_clear_object (&self->photos);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_board_details_parent_class)->dispose (object);
}

static void
bs_board_details_finalize (GObject *object)
{
  g_free (BS_BOARD_DETAILS (object)->id);
  G_OBJECT_CLASS (bs_board_details_parent_class)->finalize (object);
}

static void
bs_board_details_class_init (BsBoardDetailsClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_board_details_dispose;
  G_OBJECT_CLASS (class)->finalize = bs_board_details_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
bs_board_details_init (BsBoardDetails *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 12);
}

static GtkWidget *
photo_buttons_new (BsBoardDetails *self)
{
  const char *const labels[2][2] = { { _ ("Photo of the top…"), _ ("Take off") },
                                     { _ ("Photo of the underside…"), _ ("Take off") } };
  const char *const names[2]
      = { _ ("Take the photo of the top off"), _ ("Take the photo of the underside off") };
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  for (int i = 0; i < 2; i++)
    {
      GtkWidget *choose = gtk_button_new_with_label (labels[i][0]);
      self->clear[i] = gtk_button_new_with_label (labels[i][1]);
      g_object_set_data (G_OBJECT (choose), "underside", i == 1 ? self : NULL);
      g_object_set_data (G_OBJECT (self->clear[i]), "underside", i == 1 ? self : NULL);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->clear[i]),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL, names[i], -1);
      g_signal_connect (choose, "clicked", G_CALLBACK (choose_photo_cb), self);
      g_signal_connect (self->clear[i], "clicked", G_CALLBACK (clear_photo_cb), self);
      gtk_grid_attach (GTK_GRID (grid), choose, 0, i, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), self->clear[i], 1, i, 1, 1);
    }
  gtk_widget_set_tooltip_text (grid,
                               _ ("The whole face and nothing else, its left end to the left. "
                                  "The plan refers to the file and does not copy it."));
  gtk_widget_set_valign (grid, GTK_ALIGN_START);
  return grid;
}

/* A note as in the list of findings: its sign, its word, its sentence. */
static GtkWidget *
note_new (GtkWidget *sentence)
{
  GtkWidget *note = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *sign = g_object_new (BS_TYPE_SEVERITY_SIGN, NULL);
  GtkWidget *word = gtk_label_new (bs_words_severity (BS_SEVERITY_NOTE));

  bs_severity_sign_show (BS_SEVERITY_SIGN (sign), BS_SEVERITY_NOTE);
  gtk_widget_add_css_class (word, "faint");
  gtk_widget_set_hexpand (sentence, TRUE);
  gtk_widget_set_valign (sign, GTK_ALIGN_START);
  gtk_widget_set_valign (word, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (note), sign);
  gtk_box_append (GTK_BOX (note), word);
  gtk_box_append (GTK_BOX (note), sentence);
  return note;
}

static void
build (BsBoardDetails *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  GtkWidget *facts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *fibres = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);

  self->canvas = bs_board_canvas_new (self->session, self->photos);
  self->finish = bs_number_row_new ();
  self->heed = bs_label_new_wrapped (NULL, NULL);
  self->photos_problem = bs_label_new_wrapped (NULL, NULL);
  self->photos_note = note_new (self->photos_problem);
  self->defects = bs_rows_editor_new (self->session, &bs_board_defects, NULL);
  self->rings = bs_form_new (self->session, N_ ("Rings"), &bs_record_board, NULL, bs_board_details,
                             bs_n_board_details);
  self->run_out = bs_form_new (self->session, N_ ("Run-out"), &bs_record_board, NULL,
                               bs_board_run_outs, bs_n_board_run_outs);

  gtk_widget_set_hexpand (facts, TRUE);
  gtk_box_append (GTK_BOX (facts), self->finish);
  gtk_box_append (GTK_BOX (facts), self->heed);
  gtk_box_append (GTK_BOX (line), facts);
  gtk_box_append (GTK_BOX (line), photo_buttons_new (self));
  gtk_box_append (GTK_BOX (fibres), self->rings);
  gtk_box_append (GTK_BOX (fibres), self->run_out);
  gtk_widget_set_parent (self->canvas, GTK_WIDGET (self));
  gtk_widget_set_parent (self->photos_note, GTK_WIDGET (self));
  gtk_widget_set_parent (line, GTK_WIDGET (self));
  gtk_widget_set_parent (self->defects, GTK_WIDGET (self));
  gtk_widget_set_parent (fibres, GTK_WIDGET (self));
}

GtkWidget *
bs_board_details_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsBoardDetails *self = g_object_new (BS_TYPE_BOARD_DETAILS, NULL);
  self->session = g_object_ref (session);
  self->photos = g_object_ref (bs_photos_get_shared (session));
  build (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->photos, "changed", G_CALLBACK (show_photos), self,
                           G_CONNECT_SWAPPED);
  show (self);
  return GTK_WIDGET (self);
}

void
bs_board_details_set_board (BsBoardDetails *self, const char *id)
{
  g_return_if_fail (BS_IS_BOARD_DETAILS (self));

  if (g_strcmp0 (self->id, id) == 0)
    return;
  g_free (self->id);
  self->id = g_strdup (id);
  bs_board_canvas_set_board (BS_BOARD_CANVAS (self->canvas), id);
  bs_rows_editor_set_owner (BS_ROWS_EDITOR (self->defects), id);
  bs_form_set_id (self->rings, id);
  bs_form_set_id (self->run_out, id);
  show (self);
}
