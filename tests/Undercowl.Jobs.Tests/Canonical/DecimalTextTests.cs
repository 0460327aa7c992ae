namespace Undercowl.Jobs.Tests.Canonical;

public sealed class DecimalTextTests
{
    [Theory]
    [InlineData("0", 0)]
    [InlineData("-0.0", 0)]
    [InlineData("12", 12)]
    [InlineData("0.90", 0.9)]
    [InlineData("-3.5", -3.5)]
    public void Digits_as_read_are_taken(string text, double value)
    {
        Assert.Equal((decimal)value, DecimalText.Parse(text).Value);
        Assert.Equal(text, DecimalText.Parse(text).ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("+1")]
    [InlineData("1.")]
    [InlineData(".5")]
    [InlineData("1,5")]
    [InlineData("1e3")]
    [InlineData("007")]
    [InlineData(" 1")]
    [InlineData("--1")]
    [InlineData("1.2.3")]
    [InlineData("NaN")]
    [InlineData("١")]
    [InlineData("12345678901234567890123456789")]
    public void Anything_else_is_refused_with_the_way_to_write_it(string text)
    {
        Assert.False(DecimalText.TryParse(text, out _));
        Assert.Contains("Write digits with a point", Assert.Throws<JobException>(() => DecimalText.Parse(text)).Problem.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_taken_number_fits_a_decimal_exactly()
    {
        // derived: 28 digits are below 2^96 - 1 = 79228162514264337593543950335, which has 29.
        Assert.Equal(9999999999999999999999999999m, DecimalText.Parse(new string('9', 28)).Value);
        Assert.Equal(0.9999999999999999999999999999m * 1, DecimalText.Parse("0." + new string('9', 27)).Value + 0.0000000000000000000000000009m);
    }

    [Fact]
    public void A_trailing_zero_makes_another_reading() => Assert.NotEqual(DecimalText.Parse("0.9"), DecimalText.Parse("0.90"));
}
