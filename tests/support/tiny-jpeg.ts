// A baseline JPEG of 16 × 8 pixels, red above and blue below, for previews in synthetic files.
const base64 = [
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABsSFBcUERsXFhceHBsgKEIrKCUlKFE6PTBCYFVlZF9VXVtqeJmBanGQc1tdhbWGkJ6j',
  'q62rZ4C8ybqmx5moq6T/2wBDARweHigjKE4rK06kbl1upKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSk',
  'pKSkpKSkpKT/wAARCAAIABADASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAX/xAAWEAEBAQAAAAAAAAAAAAAAAAAAE2H/',
  'xAAVAQEBAAAAAAAAAAAAAAAAAAADBf/EABcRAAMBAAAAAAAAAAAAAAAAAAADFFH/2gAMAwEAAhEDEQA/AJNtLaCtGrBqm6f/2Q==',
].join('')

export const tinyJpeg = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
