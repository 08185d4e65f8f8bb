using System.Drawing;
using Iot.Device.Graphics;

namespace OnboardHeat.Outputs.Showing;

/// <summary>
/// Pictures of nothing. The bindings' driver clears the panel by drawing one when it starts, and would ask for a whole
/// graphics library to make it; we draw ourselves.
/// </summary>
internal sealed class BlankImages : IImageFactory
{
    private static int s_isRegistered;

    /// <summary>The bindings keep one factory for the whole process; another's is left alone.</summary>
    public static void Register()
    {
        if (Interlocked.Exchange(ref s_isRegistered, 1) == 0)
        {
            BitmapImage.RegisterImageFactory(new BlankImages());
        }
    }

    public BitmapImage CreateBitmap(int width, int height, PixelFormat pixelFormat) => new Blank(width, height);

    public BitmapImage CreateFromStream(Stream file) =>
        throw new NotSupportedException("Nothing here is drawn from files.");

    private sealed class Blank(int width, int height) : BitmapImage(
        width, height, width * 4, PixelFormat.Format32bppArgb)
    {
        private readonly byte[] _bytes = new byte[width * height * 4];

        public override void SetPixel(int x, int y, Color color)
        {
        }

        public override Color GetPixel(int x, int y) => Color.Black;

        public override Span<byte> AsByteSpan() => _bytes;

        public override void SaveToStream(Stream stream, ImageFileType format) =>
            throw new NotSupportedException("It is blank.");

        public override IGraphics GetDrawingApi() => throw new NotSupportedException("It is blank.");

        protected override void Dispose(bool disposing)
        {
        }
    }
}
