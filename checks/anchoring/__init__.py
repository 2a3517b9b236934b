"""What holds a piece down: anchors, guys, weight, and posts in the ground.

Read ``capacity/`` (what the ground and each anchor hold), ``guys``, ``held`` (where they are) and
``anchored`` with ``anchor_group`` (what each is asked), ``ballasted``, ``filled`` and
``added_weight`` (weight), ``embedded_posts`` and ``embedded_limits``; then ``anchor_choice`` and
``guy_choice``, which try kinds by the same check, and ``ground_parts`` (what stands on the ground).
"""
