"""Money: currencies with the digits of their minor units, what a price may be, and rounding.

Every amount of money is a `decimal.Decimal`. Prices have no more digits than the minor unit, so
that whole packs at their prices add up exactly; only tax is ever rounded.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Context, Decimal
from types import MappingProxyType

from roofing_core.measures.faults import Fault, fault

#: The dearest price of one pack, and the highest tax rate in percent.
LARGEST_PRICE, HIGHEST_TAX = Decimal(1_000_000_000), Decimal(1_000)

#: More digits than the smallest minor unit of any currency has.
MOST_DIGITS = 6

#: Sums of the largest amounts keep all their digits in so many.
EXACT = Context(prec=60)

#: Codes whose minor unit has other than two digits, and those with two (ISO 4217, list one).
_DIGITS: Mapping[int, str] = MappingProxyType(
    {
        0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
        2: "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN"
        " BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP"
        " GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT"
        " LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN"
        " NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE"
        " SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES"
        " WST XAD XCD XCG YER ZAR ZMW ZWG",
        3: "BHD IQD JOD KWD LYD OMR TND",
        4: "CLF UYW",
    }
)

_DIGITS_OF: Mapping[str, int] = MappingProxyType(
    {code: digits for digits, codes in _DIGITS.items() for code in codes.split()}
)

_LETTERS = 3


def minor_digits(currency: str) -> int | None:
    """Give the digits after the point of a currency.

    Args:
        currency: Its code of three capital letters.

    Returns:
        0 to 4, or ``None`` for a code that is not on the list, or has no minor unit, such as gold.

    Raises:
        Nothing.

    Source:
        ISO 4217, list one, as published 2026-01-01.

    >>> minor_digits("JPY"), minor_digits("USD"), minor_digits("KWD"), minor_digits("XAU")
    (0, 2, 3, None)
    """
    return _DIGITS_OF.get(currency)


def currency_fault(at: str, currency: str, digits: int | None) -> Fault | None:
    """Give the fault of a currency whose code is none, or is not known and comes without digits.

    Args:
        at: The name to put into the fault.
        currency: Its code.
        digits: The digits after the point that the caller states, if any.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        ISO 4217: three capital letters.

    >>> currency_fault("currency", "USD", None) is None
    True
    """
    letters = currency.isascii() and currency.isalpha() and currency.isupper()
    if not (letters and len(currency) == _LETTERS):
        return fault(
            at,
            currency or "an empty text",
            "a currency by the three capital letters of ISO 4217, as USD",
        )
    if digits is None and minor_digits(currency) is None:
        wanted = "a code in use on the list of ISO 4217, as USD; for another state minor_digits too"
        return fault(at, currency, wanted)
    return None


def price_fault(at: str, price: Decimal, *, digits: int = MOST_DIGITS) -> Fault | None:
    """Give the fault of a price that is no decimal, negative, too large or too fine.

    Args:
        at: The name to put into the fault.
        price: The price.
        digits: The most digits after the point.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> price_fault("price", Decimal("12.495"), digits=2).written()
    'price came as 12.495: at most 2 digits after the point'
    """
    return _decimal_fault(at, price, most=LARGEST_PRICE, digits=digits)


def rate_fault(at: str, rate: Decimal) -> Fault | None:
    """Give the fault of a tax rate that is no decimal, negative, too high or too fine.

    Args:
        at: The name to put into the fault.
        rate: In percent.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> rate_fault("tax_rate", Decimal(-1)).written()
    'tax_rate came as -1: zero or more and at most 1000'
    """
    return _decimal_fault(at, rate, most=HIGHEST_TAX, digits=MOST_DIGITS)


def _decimal_fault(at: str, value: object, *, most: Decimal, digits: int) -> Fault | None:
    if not isinstance(value, Decimal):
        wanted = 'a Decimal made of a text, such as Decimal("12.49"): a float is not exact'
        return fault(at, repr(value), wanted)
    if not (value.is_finite() and 0 <= value <= most):
        return fault(at, str(value), f"zero or more and at most {most}")
    if in_minor_units(value, digits) is None:
        after = f"at most {digits} digits after the point" if digits else "no digits after a point"
        return fault(at, plain(value), after)
    return None


def in_minor_units(money: Decimal, digits: int) -> int | None:
    """Give an amount of money in whole minor units.

    Args:
        money: The amount; finite.
        digits: The digits of the minor unit.

    Returns:
        Whole minor units, or ``None`` where the amount is finer than they are.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> in_minor_units(Decimal("12.49"), 2), in_minor_units(Decimal("12.5"), 0)
    (1249, None)
    """
    top, bottom = money.as_integer_ratio()
    whole, rest = divmod(top * 10**digits, bottom)
    return None if rest else whole


def from_minor_units(units: int, digits: int) -> Decimal:
    """Give whole minor units as an amount of money, with all digits of its minor unit.

    Args:
        units: Whole minor units.
        digits: The digits of the minor unit.

    Returns:
        The amount.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> from_minor_units(1250, 2), from_minor_units(1250, 0)
    (Decimal('12.50'), Decimal('1250'))
    """
    return Decimal(units).scaleb(-digits, EXACT)


def whole_units(money: Decimal, digits: int) -> int:
    """Give an amount of money that is not finer than its minor unit in whole minor units.

    Args:
        money: The amount; finite.
        digits: The digits of the minor unit.

    Returns:
        Whole minor units.

    Raises:
        Nothing: An amount that is finer is a slip in the code.

    Source:
        Arithmetic.

    >>> whole_units(Decimal("38.9"), 2)
    3890
    """
    units = in_minor_units(money, digits)
    assert units is not None, "money finer than its minor unit"
    return units


def plain(money: Decimal) -> str:
    """Write a decimal with its digits and no power of ten.

    Args:
        money: The amount; finite.

    Returns:
        Its digits.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> plain(Decimal("1E+3")), plain(Decimal("12.50"))
    ('1000', '12.50')
    """
    return f"{money:f}"


def tax_on(taxable: int, rate: Decimal, *, included: bool = False) -> int:
    """Give the tax on an amount in minor units, rounded half up to a whole one.

    ``taxable * rate / 100``, or where the amount includes it,
    ``taxable * rate / (100 + rate)``.

    Args:
        taxable: What is taxed, in minor units; 0 or more.
        rate: In percent.
        included: Whether the amount includes the tax.

    Returns:
        The tax in minor units.

    Raises:
        Nothing.

    Source:
        Half up, on the sum of an invoice or of each item as the seller elects: Streamlined Sales
        and Use Tax Agreement, section 324 (Rhode Island General Laws 44-18.1-25). On the sum of
        each rate: EN 16931, BR-CO-17.

    >>> tax_on(1018, Decimal("8.25")), tax_on(1019, Decimal("8.25")), tax_on(11900, Decimal(19))
    (84, 84, 2261)
    """
    top, bottom = rate.as_integer_ratio()
    whole = 100 * bottom + (top if included else 0)
    return (2 * taxable * top + whole) // (2 * whole)
