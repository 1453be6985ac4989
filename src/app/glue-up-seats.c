/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-canvas-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/photos.h"
#include "words/words.h"

/* One seat for each lamination of the plan shown: what it looks like, what is read out, and its way
 * from where it was to where it goes. */

#define SLIDE_US 150000
#define DRAW_US 4000

void
bs_glue_up_seat_free (gpointer data)
{
  BsSeat *seat = data;

  gtk_widget_unparent (GTK_WIDGET (seat->strip));
  g_free (seat->id);
  g_free (seat);
}

static void
strip_focused_cb (GtkEventControllerFocus *focus, BsGlueUpCanvas *self)
{
  GtkWidget *strip = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (focus));

  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      if (GTK_WIDGET (seat->strip) == strip)
        bs_session_select (self->session, seat->id);
    }
}

static BsSeat *
seat_new (BsGlueUpCanvas *self, const char *id)
{
  BsSeat *seat = g_new0 (BsSeat, 1);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  seat->id = g_strdup (id);
  seat->strip = BS_LAMINATION_STRIP (bs_lamination_strip_new ());
  g_signal_connect (focus, "enter", G_CALLBACK (strip_focused_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (seat->strip), focus);
  gtk_widget_set_parent (GTK_WIDGET (seat->strip), GTK_WIDGET (self));
  return seat;
}

static BsSeat *
find_seat_by_id (BsGlueUpCanvas *self, const char *id)
{
  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      if (g_str_equal (seat->id, id))
        return seat;
    }
  return NULL;
}

BsSeat *
bs_glue_up_seats_get_selected (BsGlueUpCanvas *self)
{
  const char *selected = bs_session_get_selected (self->session);

  return selected != NULL ? find_seat_by_id (self, selected) : NULL;
}

/* The last one that is drawn there is the one on top. */
BsSeat *
bs_glue_up_seats_find_at (BsGlueUpCanvas *self, double x, double y)
{
  graphene_point_t point = GRAPHENE_POINT_INIT ((float)x, (float)y);

  for (guint i = self->seats->len; i > 0; i--)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i - 1);

      if (graphene_rect_contains_point (&seat->now, &point))
        return seat;
    }
  return NULL;
}

static void
want_seats (BsGlueUpCanvas *self, const BsStack *stack, gboolean is_in_rack)
{
  for (guint i = 0; i < stack->n; i++)
    {
      const char *id = stack->placed[i].lamination->id;
      BsSeat *seat = find_seat_by_id (self, id);

      if (seat == NULL)
        {
          seat = seat_new (self, id);
          g_ptr_array_add (self->seats, seat);
        }
      seat->is_wanted = TRUE;
      seat->is_in_rack = is_in_rack;
      seat->place = i;
    }
}

static int
compare_seats (gconstpointer a, gconstpointer b)
{
  const BsSeat *one = *(BsSeat *const *)a, *two = *(BsSeat *const *)b;

  if (one->is_in_rack != two->is_in_rack)
    return one->is_in_rack ? 1 : -1;
  return (one->place > two->place) - (one->place < two->place);
}

/* The order of the children is the order in which they are read out; while one is carried it may
 * wait. */
static void
order_children (BsGlueUpCanvas *self)
{
  GtkWidget *previous = NULL;

  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);
      GtkWidget *strip = GTK_WIDGET (seat->strip);

      if (gtk_widget_get_prev_sibling (strip) != previous)
        gtk_widget_insert_after (strip, GTK_WIDGET (self), previous);
      previous = strip;
    }
}

/* One seat for each lamination of the plan shown. */
void
bs_glue_up_seats_match (BsGlueUpCanvas *self)
{
  for (guint i = 0; i < self->seats->len; i++)
    ((BsSeat *)g_ptr_array_index (self->seats, i))->is_wanted = FALSE;
  want_seats (self, bs_glue_up_canvas_get_slab (self), FALSE);
  want_seats (self, self->rack, TRUE);
  for (guint i = self->seats->len; i > 0; i--)
    if (!((BsSeat *)g_ptr_array_index (self->seats, i - 1))->is_wanted)
      g_ptr_array_remove_index (self->seats, i - 1);
  g_ptr_array_sort (self->seats, compare_seats);
  if (!bs_session_has_preview (self->session))
    order_children (self);
}

static int
count_findings (const BsResults *results, int place)
{
  int n = 0;

  for (guint i = 0; i < results->findings->len; i++)
    if (g_array_index (results->findings, BsFinding, i).place == place)
      n++;
  return n;
}

static void
describe_seat (BsGlueUpCanvas *self, BsSeat *seat, const BsPlaced *placed)
{
  const BsResults *results = bs_session_get_results (self->session);
  const char *label = placed->lamination->label;
  gboolean is_selected = seat == bs_glue_up_seats_get_selected (self);
  g_autofree char *text = NULL;

  if (label == NULL)
    label = placed->lamination->id;
  if (seat->is_in_rack)
    /* Translators: a lamination's label. */
    text = g_strdup_printf (_ ("%s, in the rack"), label);
  else
    {
      int n = count_findings (results, (int)seat->place);
      g_autofree char *findings
          = n == 0 ? g_strdup (_ ("no findings"))
                   : g_strdup_printf (ngettext ("%d finding", "%d findings", (gulong)n), n);

      /* Translators: label, place, number of laminations, "turned over", "2 findings". */
      text = g_strdup_printf (_ ("%s, place %d of %d, %s, %s"), label, (int)seat->place + 1,
                              (int)results->stack->n, bs_words_orientation (placed->orientation),
                              findings);
    }
  bs_lamination_strip_describe (seat->strip, text, is_selected);
}

static BsMark
find_marks (BsGlueUpCanvas *self, BsSeat *seat)
{
  BsMark marks = BS_MARK_NONE;

  if (!seat->is_in_rack)
    marks |= bs_marks_from_findings (bs_session_get_results (self->session), (int)seat->place);
  if (g_strcmp0 (seat->id, bs_session_get_selected (self->session)) == 0)
    marks |= BS_MARK_SELECTED;
  if (seat == self->hold.seat)
    marks |= BS_MARK_HELD;
  return marks;
}

static BsFacePhoto
find_photo (BsGlueUpCanvas *self, const BsPlan *plan, const BsPlaced *placed)
{
  BsFacePhoto photo = bs_photo_find_shown (plan, placed);

  photo.surface = bs_photos_get (bs_photos_get_shared (self->session), photo.path);
  return photo;
}

static void
show_seat (BsGlueUpCanvas *self, BsSeat *seat)
{
  const BsStack *stack = seat->is_in_rack ? self->rack : bs_glue_up_canvas_get_slab (self);
  const BsGlueUpLayout *layout = &self->layout;
  const BsPlaced *placed = &stack->placed[seat->place];
  BsStripLook look = {
    .placed = *placed,
    .photo = find_photo (self, stack->plan, placed),
    .section = seat->is_in_rack ? layout->rack : layout->section,
    .face = layout->face,
    .is_in_rack = seat->is_in_rack,
    .marks = find_marks (self, seat),
    .palette = self->palette,
  };
  double bottom = seat->is_in_rack ? seat->goal.size.height
                                   : round (stack->height * layout->section.per_mm_across);
  double face_top
      = round (layout->face.top - layout->section.top + placed->x * layout->face.per_mm_along);

  bs_lamination_strip_show (seat->strip, stack->plan, &look, bottom, face_top);
  describe_seat (self, seat, placed);
}

void
bs_glue_up_seats_show (BsGlueUpCanvas *self)
{
  for (guint i = 0; i < self->seats->len; i++)
    show_seat (self, g_ptr_array_index (self->seats, i));
  bs_glue_up_canvas_draw_soon (self);
}

/* As many pictures as a frame has time for: sixty laminations would hold up the window otherwise.
 */
static void
draw_some (BsGlueUpCanvas *self)
{
  gint64 until = g_get_monotonic_time () + DRAW_US;

  if (self->is_stale) /* not before it is laid out */
    return;
  bs_glue_up_scenery_draw (self);
  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      if (bs_lamination_strip_draw (seat->strip) && g_get_monotonic_time () > until)
        return;
    }
  self->is_drawn = TRUE;
}

static graphene_rect_t
find_goal (BsGlueUpCanvas *self, const BsSeat *seat)
{
  return seat->is_in_rack ? bs_glue_up_layout_seat (&self->layout, self->rack, seat->place)
                          : bs_glue_up_layout_column (
                              &self->layout, bs_glue_up_canvas_get_slab (self), seat->place);
}

static void
set_goals (BsGlueUpCanvas *self)
{
  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      seat->goal = find_goal (self, seat);
      if (!seat->is_placed)
        seat->now = seat->goal;
      seat->is_placed = TRUE;
    }
}

static void
jump (BsGlueUpCanvas *self)
{
  self->slide_start = 0;
  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      seat->now = seat->goal;
    }
}

/* The slide. */

/* FALSE when everything is where it goes. */
static gboolean
set_off (BsGlueUpCanvas *self)
{
  gboolean is_under_way = FALSE;

  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      seat->from = seat->now;
      if (!graphene_rect_equal (&seat->now, &seat->goal))
        is_under_way = TRUE;
    }
  return is_under_way;
}

void
bs_glue_up_seats_place (BsGlueUpCanvas *self, gboolean is_at_once)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (self));
  gboolean is_animated = FALSE;

  set_goals (self);
  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-enable-animations", &is_animated,
                NULL);
  if (is_at_once || !is_animated || clock == NULL)
    jump (self);
  else if (set_off (self))
    {
      self->slide_start = gdk_frame_clock_get_frame_time (clock);
      bs_glue_up_seats_start_tick (self);
    }
}

/* Quick at first, then gently home. */
static float
ease (double part)
{
  double rest = 1.0 - part;

  return (float)(1.0 - rest * rest * rest);
}

static void
advance_slide (BsGlueUpCanvas *self, gint64 time)
{
  double part = CLAMP ((double)(time - self->slide_start) / SLIDE_US, 0.0, 1.0);

  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      graphene_rect_interpolate (&seat->from, &seat->goal, ease (part), &seat->now);
    }
  if (part >= 1.0)
    self->slide_start = 0;
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (widget);

  if (self->slide_start != 0)
    {
      advance_slide (self, gdk_frame_clock_get_frame_time (clock));
      gtk_widget_queue_draw (widget);
    }
  if (!self->is_drawn)
    draw_some (self);
  if (self->hold.seat != NULL)
    bs_glue_up_hold_tick (self);
  if (self->slide_start != 0 || !self->is_drawn || self->hold.seat != NULL)
    return G_SOURCE_CONTINUE;
  self->tick = 0;
  return G_SOURCE_REMOVE;
}

void
bs_glue_up_seats_start_tick (BsGlueUpCanvas *self)
{
  if (self->tick == 0)
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
}

static BsSeat *
find_beside (BsGlueUpCanvas *self, BsSeat *from, int step)
{
  guint index = 0;

  g_ptr_array_find (self->seats, from, &index);
  int next = (int)index + step;
  if (next < 0 || next >= (int)self->seats->len)
    return from;
  BsSeat *seat = g_ptr_array_index (self->seats, next);
  return seat->is_in_rack == from->is_in_rack ? seat : from;
}

/* The nearest in the rack from the slab, or in the slab from the rack. */
static BsSeat *
find_across (BsGlueUpCanvas *self, BsSeat *from)
{
  BsSeat *best = from;
  float least = G_MAXFLOAT;

  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);
      float distance = fabsf (seat->goal.origin.x - from->goal.origin.x);

      if (seat->is_in_rack != from->is_in_rack && distance < least)
        {
          best = seat;
          least = distance;
        }
    }
  return best;
}

BsSeat *
bs_glue_up_seats_find_next (BsGlueUpCanvas *self, BsSeat *from, GtkDirectionType direction)
{
  if (direction == GTK_DIR_LEFT)
    return find_beside (self, from, -1);
  if (direction == GTK_DIR_RIGHT)
    return find_beside (self, from, 1);
  return from->is_in_rack == (direction == GTK_DIR_DOWN) ? from : find_across (self, from);
}

BsSeat *
bs_glue_up_seats_get_focused (BsGlueUpCanvas *self)
{
  GtkWidget *child = gtk_widget_get_focus_child (GTK_WIDGET (self));

  for (guint i = 0; child != NULL && i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      if (GTK_WIDGET (seat->strip) == child)
        return seat;
    }
  return NULL;
}
