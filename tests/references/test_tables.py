"""Every data file is sound and says where it comes from."""

import csv
from pathlib import Path

import numpy as np
import printed
import pytest

import yardfast.references
from yardfast import references

FOLDER = Path(yardfast.references.__file__).parent
FILES = sorted(FOLDER.rglob("*.csv"))


def test_there_are_tables_of_each_trade() -> None:
    assert {name.split("/")[0] for name in references.table_names()} >= {"wind", "wood", "ground"}


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.relative_to(FOLDER).as_posix())
def test_file_is_a_table_with_provenance_in_every_row(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    head, *rows = csv.reader(text.splitlines())
    assert rows
    assert len(set(head)) == len(head)
    assert {len(row) for row in rows} == {len(head)}
    for row in rows:
        fields = dict(zip(head, row, strict=True))
        assert fields["source"].strip() not in ("", "-", "same", "none")
        assert fields["confidence"] in references.CONFIDENCES
    assert text.endswith("\n")


def test_readme_explains_every_confidence() -> None:
    readme = (FOLDER / "README.md").read_text(encoding="utf-8")
    for word in references.CONFIDENCES:
        assert f"| {word} |" in readme


def test_sources_cited_by_number_are_listed() -> None:
    known = {row["id"] for row in references.table("ground/sources").rows}
    cited = {
        part[:3]
        for file in FILES
        for part in file.read_text(encoding="utf-8").split("[")[1:]
        if part[:1] == "R" and part[1:3].isdigit() and part[3:4] == "]"
    }
    assert cited
    assert cited <= known


def test_numbers_are_as_printed_and_si_by_the_ending_of_the_header() -> None:
    soils = references.table("ground/ibc_presumptive_soil")
    assert soils.numbers("vertical_psf").tolist() == [12000, 4000, 3000, 2000, 1500]
    # the same table prints kPa beside psf: IBC 2012 Table 1806.2
    assert soils.si("vertical_psf") / 1000.0 == pytest.approx(
        soils.numbers("vertical_kPa"), abs=0.05
    )


def test_si_by_the_unit_column() -> None:
    densities = references.table("wood/materials_density")
    row = [each["material"] for each in densities.rows].index("Steel")
    assert densities.si("low")[row] == pytest.approx(7881.1, abs=0.05)  # 492 x 16.01846 lb/ft3


def test_panel_labels_in_inches_and_millimetres_agree() -> None:
    # APA performance-category page prints both
    panels = printed.table("panel_thickness_ps1")
    metric = panels.numbers("decimal_label_mm")
    assert 1000.0 * panels.si("decimal_label_in") == pytest.approx(metric, abs=0.0127 + 0.005)


def test_a_header_without_a_unit_is_not_guessed() -> None:
    with pytest.raises(KeyError, match="unit"):
        references.table("wind/asce7_kd").si("Kd_7_22")


def test_an_empty_field_is_not_a_number() -> None:
    assert np.isnan(
        references.table("ground/ibc_presumptive_soil").numbers("sliding_cohesion_psf")[0]
    )


def test_text_is_not_a_number() -> None:
    with pytest.raises(ValueError, match="could not convert"):
        references.table("wind/asce7_kd").numbers("Kd_7_10")


def test_a_missing_table_is_named_with_the_nearest() -> None:
    with pytest.raises(KeyError, match="'wind/asce7_kd'"):
        references.table("wind/asce_kd")


def test_a_missing_column_or_row_is_named() -> None:
    kd = references.table("wind/asce7_kd")
    with pytest.raises(KeyError, match="Kd_7_28"):
        kd.numbers("Kd_7_28")
    with pytest.raises(KeyError, match="0 rows"):
        kd.one("structure_type", "castle")
    assert kd.where("structure_type", "castle") == ()


def test_a_table_is_as_well_known_as_its_worst_row() -> None:
    assert references.table("wood/nails_geometry").confidence == "memory"
    assert references.table("ground/ibc_presumptive_soil").confidence == "copy"
    assert "IBC 2012" in references.table("ground/ibc_presumptive_soil").source


def test_digest_follows_every_byte_of_every_table(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from yardfast.references import fingerprint

    assert len(references.digest()) == 64
    (tmp_path / "a.csv").write_text("x\n1\n")
    (tmp_path / "b.txt").write_text("y\n")
    monkeypatch.setattr(fingerprint, "_FOLDER", tmp_path)

    def now() -> str:
        references.digest.cache_clear()
        return references.digest()

    first = now()
    assert now() == first
    (tmp_path / "a.csv").write_text("x\n2\n")
    assert now() != first
    (tmp_path / "a.csv").write_text("x\n1\n")
    assert now() == first
    (tmp_path / "b.txt").rename(tmp_path / "c.txt")
    assert now() != first
    references.digest.cache_clear()


def test_lumber_is_dressed_as_the_standard_says() -> None:
    # PS 20: as sold in the trade, 2x4 is 1 1/2 by 3 1/2 in, 1x8 3/4 by 7 1/4, 5/4x6 1 by 5 1/2
    sizes = references.table("wood/lumber_sizes")
    for nominal, thickness, width in [
        ("1x8", 0.75, 7.25),
        ("5/4x6", 1.0, 5.5),
        ("2x2", 1.5, 1.5),
        ("2x4", 1.5, 3.5),
        ("2x6", 1.5, 5.5),
        ("2x10", 1.5, 9.25),
        ("2x12", 1.5, 11.25),
        ("4x4", 3.5, 3.5),
        ("6x6", 5.5, 5.5),
        ("6x8", 5.5, 7.5),
    ]:
        row = sizes.one("nominal", nominal)
        assert (float(row["thickness_in"]), float(row["width_in"])) == (thickness, width)


def test_sheets_measure_what_their_category_says() -> None:
    # PS 1 performance categories: decimal label, least and most
    labels = printed.table("panel_thickness_ps1")
    for row in references.table("wood/stock_sheets").rows:
        label = labels.one("performance_category", row["performance_category"])
        assert row["thickness_in"] == label["decimal_label_in"]
        assert float(row["least_in"]) <= float(row["thickness_in"]) <= float(row["most_in"])
        assert (row["least_in"], row["most_in"]) == (label["min_in"], label["max_in"])


def test_green_gravities_agree_between_tables() -> None:
    species = references.table("wood/species_properties")
    held = {row["species"]: float(row["G_green_basis"]) for row in species.rows}
    rows = [row for row in printed.table("species_density_derived").rows if row["species"] in held]
    assert len(rows) >= 20
    for row in rows:
        assert held[row["species"]] == float(row["G_green_basis"])


@pytest.mark.parametrize(
    ("kind", "table", "column"),
    [
        ("wood screw", "wood/wood_screws_geometry", "gauge"),
        ("deck screw", "wood/deck_screws_geometry", "size"),
        ("lag screw", "wood/lag_screws_geometry", "size"),
        ("staple", "wood/staples_geometry", "gauge"),
        ("bolt", "wood/bolts_geometry", "size"),
    ],
)
def test_fasteners_that_are_sold_have_a_size_in_the_geometry_tables(kind, table, column) -> None:
    """Each size has its row there, and both ladders rise."""
    sold = references.table("wood/fasteners_sold").where("kind", kind)
    sizes = [row["value"] for row in sold if row["measure"] == "size"]
    named = [row[column] for row in references.table(table).rows]
    across = [
        width
        for size in sizes
        for name, width in zip(named, _diameters(table), strict=True)
        if name == size
    ]
    assert len(across) == len(sizes) > 2
    assert across == sorted(set(across))
    for measure in ("length in inches", "length in mm"):
        lengths = [float(row["value"]) for row in sold if row["measure"] == measure]
        assert lengths == sorted(set(lengths))


def _diameters(table):
    found = references.table(table)
    column = next(
        name
        for name in ("nominal_dia_in", "thread_outer_in", "dia_in", "leg_dia_in")
        if name in found.columns
    )
    return found.si(column).tolist()
